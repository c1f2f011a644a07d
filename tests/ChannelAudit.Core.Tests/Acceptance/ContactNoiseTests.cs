using System.Collections.Concurrent;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Broadband noise is found at its size, under contractions too; a tense muscle is none. Limits: docs/criteria.md; truth: the plan.</summary>
public sealed class ContactNoiseTests
{
    private const string Reason = "noise-floor";
    private const int First = 8;
    private static readonly ConcurrentDictionary<(int Number, bool IsAbove), Lazy<RecordingResult>> Results = new();

    public static TheoryData<int> Sessions => [0, 1, 2, 3, 4, 5];

    [Theory]
    [MemberData(nameof(Sessions))]
    public void ItIsRejectedAboveItsLimitInQuietAndActiveTrials(int session)
    {
        (RecordingResult above, RecordingResult below) = (Of(session, true), Of(session, false));
        int[] all = [.. Enumerable.Range(1, above.Trials.Length)];

        Assert.Equal(all, MadeAudit.RejectedFor(above, "cheek", Reason));
        Assert.Empty(MadeAudit.RejectedFor(below, "cheek", Reason));
        Assert.Equal(all, MadeAudit.FoundFor(below, "cheek", Reason));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void NoiseThatStartsInMidSessionIsFoundFromThereOn(int session)
    {
        (RecordingResult above, RecordingResult below) = (Of(session, true), Of(session, false));
        int[] late = [.. Enumerable.Range(First, above.Trials.Length - First + 1)];

        Assert.Equal(late, MadeAudit.RejectedFor(above, "eye", Reason));
        Assert.Empty(MadeAudit.RejectedFor(below, "eye", Reason));
        Assert.Equal(late, MadeAudit.FoundFor(below, "eye", Reason));
        Assert.All([above, below], result => Assert.Empty(MadeAudit.FoundFor(result, "brow", Reason)));
    }

    [Theory]
    [InlineData(841, 4)]
    [InlineData(842, 8)]
    [InlineData(843, 15)]
    [InlineData(844, 30)]
    public void ATenseMuscleIsToldAndNotCalledNoise(ulong seed, double restUv)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1));
        plan = plan with { Sites = [.. plan.Sites.Select(site => site with { RestUv = restUv })] };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan));

        Assert.All(MadeAudit.Sites, site => Assert.Empty(MadeAudit.FoundFor(result, site, Reason)));
        Assert.Equal(MadeAudit.Sites, result.Information.Where(IsTonic).Select(finding => finding.Channels[0]), StringComparer.Ordinal);
    }

    /// <summary>Steady noise lasts whichever list asks for it, and whatever it is measured by.</summary>
    [Theory]
    [InlineData("questionable = []")]
    [InlineData("questionable = []\nreject = [{ noise_effect = 100.0 }]")]
    [InlineData("reject = [{ noise_effect = 100.0 }]")]
    public void SteadyNoiseIsRejectedByLimitsOfALabToo(string limits)
    {
        RecordingResult result = MadeAudit.Of(
            MadeAudit.WithConfusers(MadeAudit.Session(850, new Rational(1000, 1)), new BroadbandNoise(["cheek"], 15)), string.Empty, "[noise-floor]\n" + limits + "\n");

        Assert.Contains(1, MadeAudit.RejectedFor(result, "cheek", Reason));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", Reason));
    }

    [Fact]
    public void AQuietFaceIsNotCalledTense()
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(MadeAudit.Session(845)));

        Assert.DoesNotContain(result.Information, IsTonic);
    }

    [Theory]
    [InlineData(846, 7)]
    [InlineData(847, 15)]
    public void NoiseBehindTheLowPassOfAnAmplifierIsWhiteToo(ulong seed, double rmsUv)
    {
        SessionPlan plan = MadeAudit.Session(seed) with { Amplifier = new AmplifierPlan { LowpassHz = 400 } };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan, new BroadbandNoise(["cheek"], rmsUv)));

        Assert.Equal(Enumerable.Range(1, plan.Trials.Length), MadeAudit.FoundFor(result, "cheek", Reason));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", Reason));
    }

    [Fact]
    public void ALooseLeadBesideATrialDoesNotSpillOverIntoIt()
    {
        SessionPlan plan = MadeAudit.Session(848);
        PlannedTrial trial = plan.Trials[5];
        BroadbandNoise Beside(decimal fromS, decimal toS) => new(["cheek"], 30) { Span = new FaultSpan(fromS, toS) };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(
            plan, Beside(trial.OnsetS - 2.5M, trial.OnsetS), Beside(trial.EndS, trial.EndS + 2.5M)));

        Assert.DoesNotContain(6, MadeAudit.FoundFor(result, "cheek", Reason));
    }

    [Fact]
    public void ANarrowBandCannotTellAndSaysSo()
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(MadeAudit.Session(849, new Rational(500, 1)), new BroadbandNoise(["cheek"], 30)));

        Assert.All(result.Channels, channel => Assert.Contains(new NotAssessed(Reason, "the band ends below 300 Hz"), channel.NotAssessed));
        Assert.Empty(MadeAudit.FoundFor(result, "cheek", Reason));
    }

    private static bool IsTonic(Finding finding) => string.Equals(finding.Reason, "tonic-activity", StringComparison.Ordinal);

    private static RecordingResult Of(int number, bool isAbove) => Results.GetOrAdd(
        (number, isAbove),
        key => new Lazy<RecordingResult>(() => MadeAudit.Of(Plan(key.Number, 10 * (key.IsAbove ? 1.5 : 0.7))))).Value;

    // The last rate reaches up to 224 Hz only, where noise and muscle look alike.
    private static SessionPlan Plan(int number, double rmsUv)
    {
        SessionPlan plan = MadeAudit.Session(830 + (ulong)number, MadeAudit.Rates[number % (MadeAudit.Rates.Length - 1)]);
        return MadeAudit.WithConfusersAndMotion(
            plan,
            new BroadbandNoise(["cheek"], rmsUv),
            new BroadbandNoise(["eye"], rmsUv) { Span = new FaultSpan(plan.Trials[First - 1].OnsetS - 3, null) });
    }
}
