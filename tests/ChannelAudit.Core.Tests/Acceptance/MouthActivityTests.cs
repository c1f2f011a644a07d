using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Speech and chewing, and a source that all sites share. Truth: the sources of the plan.</summary>
public sealed class MouthActivityTests
{
    [Theory]
    [InlineData(1101, 1.0, 2000, "as in chewing")]
    [InlineData(1102, 1.5, 1000, "as in chewing")]
    [InlineData(1103, 2.0, 1024, "as in chewing")]
    [InlineData(1104, 3.5, 2000, "as in speech")]
    [InlineData(1105, 4.5, 1000, "as in speech")]
    public void BurstsAtTheRhythmOfTheMouthAreSeenAtTheCheek(ulong seed, double perS, int rateHz, string words)
    {
        MouthActivity mouth = new("cheek", 25, perS) { AlsoAt = "eye", Span = new FaultSpan(40, 60) };

        Finding found = Assert.Single(Of(Audited(seed, rateHz, mouth), ReasonCode.MouthActivity));

        Assert.EndsWith(words, found.Text, StringComparison.Ordinal);
        Assert.Equal(["cheek", "eye"], found.Channels, StringComparer.Ordinal);
        Assert.InRange(found.FromS, 39, 45);
        Assert.InRange(found.ToS, 55, 61);
    }

    [Theory]
    [InlineData(1111)]
    [InlineData(1112)]
    [InlineData(1113)]
    public void WhatHasNoRhythmOfTheMouthIsNot(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1));
        Fault[] confusers =
        [
            new MotorUnitTrain("cheek", 60, 5 + (seed % 3 * 4)),
            new Blinks("eye", 200, 3),
            new Blinks("cheek", 200, 2),
            new ElectrodePops("brow", 100, 5),
        ];

        Assert.Empty(Of(MadeAudit.Of(MadeAudit.WithConfusers(plan, confusers)), ReasonCode.MouthActivity));
    }

    /// <summary>A contraction of 20 s, and a smile of a second and a half in every scored trial.</summary>
    [Theory]
    [InlineData(1121, 12)]
    [InlineData(1122, 25)]
    [InlineData(1123, 4)]
    public void SteadyContractionsAndSingleSmilesAreNot(ulong seed, double microvolts)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1));
        plan = plan with
        {
            Trials =
            [
                .. plan.Trials.Select(trial => trial.Role switch
                {
                    TrialRole.Scored => trial with { DurationS = 1.5M, Activity = [new SiteActivity("cheek", microvolts)] },
                    TrialRole.Rest when trial.OnsetS > 30 => trial with { Label = "smile on", Role = TrialRole.Scored, Activity = [new SiteActivity("cheek", microvolts)] },
                    _ => trial,
                }),
            ],
        };

        Assert.Empty(Of(MadeAudit.Of(MadeAudit.WithConfusers(plan)), ReasonCode.MouthActivity));
    }

    [Fact]
    public void WhatTheBrowShowsAsMuchIsNotTheMouth() => Assert.Empty(
        Of(Audited(1131, 1000, new MouthActivity("cheek", 20, 1.5), new MouthActivity("brow", 20, 1.5)), ReasonCode.MouthActivity));

    [Theory]
    [InlineData(1141, 0.5, 0.4)]
    [InlineData(1142, 0.5, -0.4)]
    public void ASourceThatAllSitesShareIsCommonWhateverTheSigns(ulong seed, double potential, double acrossBrow)
    {
        RecordingResult result = Audited(seed, 1000, new CommonSource(
            8, [new RemoteShare("cheek", potential, 0.4), new RemoteShare("brow", potential, acrossBrow), new RemoteShare("eye", potential, 0.4)]));

        Finding found = Assert.Single(Of(result, ReasonCode.CommonSource));
        Assert.Equal(MadeAudit.Sites.ToArray(), found.Channels.ToArray(), StringComparer.Ordinal);
        Assert.All(result.Channels, channel => Assert.DoesNotContain("bridge", channel.Reasons, StringComparer.Ordinal));
    }

    [Fact]
    public void WhatTwoSitesShareIsNotCommon()
    {
        Assert.Empty(Of(Audited(1151, 1000, ElectrodeBridge.TwoNodes("cheek", "eye", 0.1)), ReasonCode.CommonSource));
        Assert.Empty(Of(Audited(1152, 1000, new CommonSource(8, [new RemoteShare("cheek", 0.5, 0.4), new RemoteShare("eye", 0.5, 0.4)])), ReasonCode.CommonSource));
        Assert.Empty(Of(Audited(1153, 1000, new MainsPickup(MadeAudit.Sites, 10), new Motion(MadeAudit.Sites, 20)), ReasonCode.CommonSource));
    }

    private static RecordingResult Audited(ulong seed, int rateHz, params Fault[] faults) =>
        MadeAudit.Of(MadeAudit.Session(seed, new Rational(rateHz, 1), 4) with { Faults = [.. faults] });

    private static Finding[] Of(RecordingResult result, string code) =>
        [.. result.Information.Where(finding => string.Equals(finding.Reason, code, StringComparison.Ordinal))];
}
