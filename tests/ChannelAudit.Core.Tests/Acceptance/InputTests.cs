using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Input that is no raw signal, in another unit than it says, or too coarse; and raw signals that look like it. Truth: what the test did to the samples.</summary>
public sealed class InputTests
{
    private static readonly ImmutableArray<string> Unspectral = ["bridge", "clipping", "line-noise", "narrow-band", "drift"];

    /// <summary>Smoothed over so little that it reaches into the band: its level still goes with its swing.</summary>
    [Theory]
    [InlineData(651, 5)]
    [InlineData(652, 10)]
    public void AnEnvelopeOfFewMillisecondsIsQuestionable(ulong seed, int milliseconds)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1));
        using Recording recording = MadeRecording.Make(plan).Open();
        using Recording smoothed = Altered.Changed(recording, string.Empty, samples => MovingAverage(samples, milliseconds), null);

        RecordingResult result = MadeAudit.Of(smoothed, plan);

        Assert.All(result.Channels, channel => Assert.Contains("unusable-input", channel.Reasons, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(701, 2000, 1)]
    [InlineData(702, 1000, 1)]
    [InlineData(703, 1024, -1)]
    public void ARectifiedSignalIsQuestionableAndNothingSpectralIsClaimed(ulong seed, int rateHz, double sign)
    {
        RecordingResult result = Audit(seed, rateHz, samples => [.. WithoutLevel(samples, rateHz / 20).Select(sample => sign * Math.Abs(sample))]);

        IsUnusable(result, "rectified");
        Assert.All(Unspectral, reason => Assert.Contains(reason, Cheek(result).NotAssessed.Select(open => open.Reason), StringComparer.Ordinal));
        Assert.Null(Cheek(result).Measures.First(measure => string.Equals(measure.Value.Measure, "emg_rms", StringComparison.Ordinal)).Value.Value);
    }

    [Theory]
    [InlineData(711, 2000, 0.1)]
    [InlineData(712, 1000, 0.05)]
    [InlineData(713, 2000, 0.02)]
    public void AnEnvelopeIsQuestionable(ulong seed, int rateHz, double timeConstantS) =>
        IsUnusable(Audit(seed, rateHz, samples => Envelope(WithoutLevel(samples, rateHz / 20), timeConstantS * rateHz)), "smoothed");

    [Theory]
    [InlineData(721, 20)]
    [InlineData(722, 300)]
    [InlineData(723, 20_000)]
    [InlineData(724, -3000)]
    public void ARawSignalWithAnOffsetIsRaw(ulong seed, double offset)
    {
        RecordingResult result = Audit(seed, 1000, samples => [.. samples.Select(sample => sample + offset)]);

        Assert.All(result.Channels, channel => Assert.DoesNotContain("unusable-input", channel.Reasons, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(731, 1e-3)]
    [InlineData(732, 1e-6)]
    [InlineData(733, 1e4)]
    public void AUnitThatIsWrongByThousandsIsQuestionableAndNothingInMicrovoltsIsClaimed(ulong seed, double factor)
    {
        RecordingResult result = Audit(seed, 1000, samples => [.. samples.Select(sample => sample * factor)], everywhere: true, step: 0.1 * factor);

        IsUnusable(result, "unit");
        Assert.DoesNotContain("flatline", Cheek(result).Reasons, StringComparer.Ordinal);
        Assert.Contains("line-noise", Cheek(result).NotAssessed.Select(open => open.Reason), StringComparer.Ordinal);
        Assert.DoesNotContain(result.Channels.SelectMany(channel => channel.Cells), cell => cell.Verdict == Grade.Reject);
    }

    /// <summary>One channel far weaker than the others is dead, not in another unit.</summary>
    [Fact]
    public void OneChannelAThousandTimesWeakerThanTheOthersIsFlat()
    {
        RecordingResult result = Audit(741, 1000, samples => [.. samples.Select(sample => sample * 1e-3)], step: 1e-4);

        Assert.Equal(Grade.Reject, Cheek(result).Verdict);
        Assert.Contains("flatline", Cheek(result).Reasons, StringComparer.Ordinal);
    }

    [Theory]
    [InlineData(751, 4)]
    [InlineData(752, 10)]
    [InlineData(753, 2.5)]
    public void StepsAboveTheNoiseAreQuestionableAndNotFlat(ulong seed, double step)
    {
        RecordingResult result = Audit(seed, 1000, samples => [.. samples.Select(sample => Math.Round(sample / step) * step)], step: step);

        IsUnusable(result, "coarse");
        Assert.DoesNotContain("flatline", Cheek(result).Cells.SelectMany(cell => cell.Reasons).Concat(Cheek(result).Reasons), StringComparer.Ordinal);
    }

    [Fact]
    public void ADeadStretchInACoarseFileIsStillFlat()
    {
        SessionPlan plan = MadeAudit.Session(761, new Rational(1000, 1), 8);
        decimal fromS = plan.Trials[6].OnsetS;

        RecordingResult result = Audit(plan with { Faults = [new Flatline("cheek") { Span = new FaultSpan(fromS, fromS + 4) }] }, samples => [.. samples.Select(sample => Math.Round(sample / 3) * 3)], 3, everywhere: false);

        Assert.Equal([7], MadeAudit.RejectedFor(result, "cheek", "flatline"));
    }

    private static ChannelResult Cheek(RecordingResult result) => MadeAudit.Channel(result, "cheek");

    private static void IsUnusable(RecordingResult result, string word)
    {
        ChannelResult cheek = Cheek(result);
        Assert.True(cheek.Verdict == Grade.Questionable, string.Join("; ", cheek.Findings.Select(finding => $"{finding.Grade} {finding.Text}")));
        Assert.Equal(Grade.Questionable, cheek.Verdict);
        Assert.Contains("unusable-input", cheek.Reasons, StringComparer.Ordinal);
        Assert.Contains(cheek.Findings, finding => finding.Text.Contains(word, StringComparison.Ordinal));
        Assert.All(cheek.Cells, cell => Assert.Contains("unusable-input", cell.Reasons, StringComparer.Ordinal));
    }

    // Rectifiers come behind a high-pass: a slow mean is taken off.
    private static double[] WithoutLevel(double[] samples, double memory)
    {
        double level = samples[0];
        return [.. samples.Select(sample => sample - (level += (sample - level) / memory))];
    }

    // The rectifier's mean over an exponential memory, run twice: as analogue smoothing stages do.
    private static double[] Envelope(double[] samples, double memory)
    {
        double share = 1 / memory;
        double one = 0;
        double two = 0;
        return [.. samples.Select(sample =>
        {
            one += share * (Math.Abs(sample) - one);
            two += share * (one - two);
            return two;
        })];
    }

    private static RecordingResult Audit(ulong seed, int rateHz, Func<double[], double[]> change, bool everywhere = false, double? step = null) =>
        Audit(MadeAudit.WithConfusers(MadeAudit.Session(seed, new Rational(rateHz, 1), 4)), change, step, everywhere);

    private static RecordingResult Audit(SessionPlan plan, Func<double[], double[]> change, double? step, bool everywhere)
    {
        using Recording whole = MadeRecording.Make(plan).Open();
        using Recording recording = Altered.Changed(whole, everywhere ? string.Empty : "cheek", change, step);
        return MadeAudit.Of(recording, plan);
    }

    private static double[] MovingAverage(double[] samples, int length)
    {
        double mean = samples.Average();
        return [.. Enumerable.Range(0, samples.Length).Select(i => Enumerable.Range(Math.Max(0, i - length + 1), Math.Min(length, i + 1)).Average(j => Math.Abs(samples[j] - mean)))];
    }
}
