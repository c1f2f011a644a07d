using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>What the file says of its filters. Truth: the filters of the plan, and a header that says the same or something else.</summary>
public sealed class FilterMismatchTests
{
    [Theory]
    [InlineData(1001, 0, 0, 2000)]
    [InlineData(1002, 0.1, 0, 1000)]
    [InlineData(1003, 1, 0, 2048)]
    [InlineData(1004, 5, 400, 1000)]
    [InlineData(1005, 10, 0, 2000)]
    [InlineData(1006, 10, 400, 1000)]
    [InlineData(1007, 20, 500, 2000)]
    [InlineData(1008, 30, 200, 2000)]
    [InlineData(1009, 20, 100, 1000)]
    [InlineData(1010, 0, 150, 2000)]
    [InlineData(1011, 2, 350, 2000)]
    public void AHeaderThatTellsTheTruthIsNotDoubted(ulong seed, double highpassHz, double lowpassHz, int rateHz)
    {
        SessionPlan plan = Filtered(MadeAudit.Session(seed, new Rational(rateHz, 1)), highpassHz, lowpassHz);

        Assert.Equal(string.Empty, Doubts(MadeAudit.Of(MadeAudit.WithConfusers(plan))));
        Assert.Equal(string.Empty, Doubts(MadeAudit.Of(MadeAudit.WithConfusersAndMotion(plan, new Blinks("eye", 150, 5), new MainsPickup(MadeAudit.Sites, 5)))));
    }

    [Theory]
    [InlineData(1012, 50, 0, 500)]
    [InlineData(1013, 60, 0, 400)]
    [InlineData(1014, 50, 20, 450)]
    public void StrongMainsDoubtsNoHeader(ulong seed, double mainsHz, double highpassHz, double lowpassHz)
    {
        SessionPlan plan = Filtered(MadeAudit.Session(seed, new Rational(2000, 1)), highpassHz, lowpassHz) with
        {
            Faults = [new MainsPickup(MadeAudit.Sites, 40, mainsHz) { Harmonics = [1, 0.5, 0.25, 0.2, 0.1] }],
        };

        Assert.Equal(string.Empty, Doubts(MadeAudit.Of(plan)));
    }

    [Theory]
    [InlineData(1021, 0, 20, "a high-pass of 20 Hz is stated, but from 5 to 10 Hz ")]
    [InlineData(1022, 5, 20, "a high-pass of 20 Hz is stated, but from 5 to 10 Hz ")]
    [InlineData(1023, 2.5, 10, "a high-pass of 10 Hz is stated, but from 2.5 to 5 Hz ")]
    [InlineData(1024, 10, 40, "a high-pass of 40 Hz is stated, but from 10 to 20 Hz ")]
    [InlineData(1025, 10, 0, "a high-pass of 0 Hz (DC) is stated, but from 2 to 4 Hz only ")]
    [InlineData(1026, 20, 5, "a high-pass of 5 Hz is stated, but from 5 to 10 Hz only ")]
    [InlineData(1027, 20, 1, "a high-pass of 1 Hz is stated, but from 2 to 4 Hz only ")]
    [InlineData(1028, 0, 1, "a high-pass of 1 Hz is stated, but the baseline goes by ")]
    public void AHighPassOtherThanStatedIsSaidWithNumbers(ulong seed, double trueHz, double statedHz, string words) => Assert.All(
        Audited(Filtered(MadeAudit.Session(seed, new Rational(1000, 1)), trueHz, 0), new Prefilter(statedHz, null, [], string.Empty)).Channels,
        channel => Assert.Contains(words, channel, StringComparison.Ordinal));

    [Theory]
    [InlineData(1031, 0, 100, 1000, "a low-pass of 100 Hz is stated, but above 200 Hz ")]
    [InlineData(1032, 400, 100, 2000, "a low-pass of 100 Hz is stated, but above 200 Hz ")]
    [InlineData(1033, 0, 200, 2000, "a low-pass of 200 Hz is stated, but above 400 Hz ")]
    [InlineData(1034, 100, 400, 1000, "a low-pass of 400 Hz is stated, but just below it only ")]
    [InlineData(1035, 100, 500, 2000, "a low-pass of 500 Hz is stated, but just below it only ")]
    public void ALowPassOtherThanStatedIsSaidWithNumbers(ulong seed, double trueHz, double statedHz, int rateHz, string words) => Assert.All(
        Audited(Filtered(MadeAudit.Session(seed, new Rational(rateHz, 1)), 0, trueHz), new Prefilter(0, statedHz, [], string.Empty)).Channels,
        channel => Assert.Contains(words, channel, StringComparison.Ordinal));

    [Fact]
    public void AStatedNotchUnderAStandingLineIsDoubted() => Assert.All(
        Audited(MadeAudit.Session(1041, new Rational(1000, 1)) with { Faults = [new MainsPickup(MadeAudit.Sites, 6)] }, new Prefilter(0, null, [50], string.Empty)).Channels,
        channel => Assert.Contains("a notch at 50 Hz is stated, but a line stands there", channel, StringComparison.Ordinal));

    /// <summary>A notch of 5 Hz width, which the header states or keeps to itself.</summary>
    [Theory]
    [InlineData(1045, false)]
    [InlineData(1046, true)]
    public void AHoleAtTheMainsIsDoubtedUnlessItIsStated(ulong seed, bool isStated)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1)) with { Faults = [new MainsPickup(MadeAudit.Sites, 0.3)] };
        using Recording made = MadeRecording.Make(plan).Open();
        using Recording notched = Altered.Changed(made, string.Empty, samples => Notched(samples, 50, 1000), null);
        using Recording recording = Altered.Stating(notched, new Prefilter(0, null, isStated ? [50] : [], string.Empty));

        string doubts = Doubts(MadeAudit.Of(recording, plan));

        Assert.Equal(!isStated, doubts.Contains("no notch is stated, but there is a hole at 50 Hz", StringComparison.Ordinal));
        Assert.Equal(isStated, doubts.Length == 0);
    }

    /// <summary>A dead channel has no density to compare.</summary>
    [Fact]
    public void ADeadChannelHasNoLowPassToDoubt()
    {
        SessionPlan plan = MadeAudit.Session(1044, new Rational(2000, 1), 2);
        using Recording made = MadeRecording.Make(plan).Open();
        using Recording dead = Altered.Changed(made, made.Channels[0].Label, samples => new double[samples.Length], null);
        using Recording recording = Altered.Stating(dead, new Prefilter(0, 200, [], string.Empty));

        Assert.DoesNotContain("NaN", Doubts(MadeAudit.Of(recording, plan)), StringComparison.Ordinal);
    }

    [Fact]
    public void NothingIsDoubtedWhereNothingIsStated() => Assert.Equal(
        [string.Empty],
        Audited(Filtered(MadeAudit.Session(1051, new Rational(1000, 1)), 20, 100), Prefilter.Unknown).Channels.Distinct(StringComparer.Ordinal),
        StringComparer.Ordinal);

    [Fact]
    public void ADoubtedFilterChangesNoVerdict()
    {
        RecordingResult result = Audited(Filtered(MadeAudit.Session(1061, new Rational(1000, 1)), 0, 0), new Prefilter(20, null, [], string.Empty)).Result;

        Assert.Equal(3, result.Information.Count(finding => string.Equals(finding.Reason, ReasonCode.FilterMismatch, StringComparison.Ordinal)));
        Assert.All(result.Channels, channel => Assert.Equal(Grade.Pass, channel.Verdict));
    }

    /// <summary>Zeros on the unit circle, poles just inside: 5 Hz wide at half power.</summary>
    private static double[] Notched(double[] samples, double hz, double rateHz)
    {
        double radius = 1 - (Math.PI * 5 / rateHz);
        double cosine = 2 * Math.Cos(2 * Math.PI * hz / rateHz);
        double[] filtered = new double[samples.Length];
        for (int i = 0; i < samples.Length; i++)
        {
            double before = i > 0 ? samples[i - 1] : 0;
            double before2 = i > 1 ? samples[i - 2] : 0;
            double last = i > 0 ? filtered[i - 1] : 0;
            double last2 = i > 1 ? filtered[i - 2] : 0;
            filtered[i] = samples[i] - (cosine * before) + before2 + (radius * cosine * last) - (radius * radius * last2);
        }

        return filtered;
    }

    private static SessionPlan Filtered(SessionPlan plan, double highpassHz, double lowpassHz) => plan with
    {
        Amplifier = plan.Amplifier with { HighpassHz = highpassHz, LowpassHz = lowpassHz > 0 ? lowpassHz : null },
    };

    /// <summary>The words on each channel, for a file whose header states other filters than the plan has; mains of 0.5 µV and a drift of 50 µV/min are there too.</summary>
    private static (RecordingResult Result, ImmutableArray<string> Channels) Audited(SessionPlan plan, Prefilter stated)
    {
        SessionPlan full = plan with { Faults = [.. plan.Faults, new MainsPickup(MadeAudit.Sites, 0.5), .. MadeAudit.Sites.Select(site => new Drift(site, 50))] };
        using Recording made = MadeRecording.Make(full).Open();
        using Recording recording = Altered.Stating(made, stated);
        RecordingResult result = MadeAudit.Of(recording, full);
        return (result, [.. MadeAudit.Sites.Select(site => string.Join(
            "; ", result.Information.Where(one => IsDoubt(one) && one.Channels.Contains(site, StringComparer.Ordinal)).Select(one => one.Text)))]);
    }

    private static string Doubts(RecordingResult result) => string.Join(" | ", result.Information.Where(IsDoubt).Select(one => one.Channels[0] + ": " + one.Text));

    private static bool IsDoubt(Finding finding) => string.Equals(finding.Reason, ReasonCode.FilterMismatch, StringComparison.Ordinal);
}
