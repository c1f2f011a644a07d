using System.Collections.Concurrent;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>
/// Faults that last: mains from the eighth trial on (cheek), harmonics of the mains only (brow), a tone that is no mains (eye), at 1.5 and at
/// 0.7 times their reject limit, all confusers present; headroom likewise. Limits: docs/criteria.md (engineering judgement).
/// </summary>
public sealed class SteadyFaultTests
{
    private const int First = 8;
    private static readonly ConcurrentDictionary<(int Number, bool IsAbove), Lazy<RecordingResult>> Results = new();

    public static TheoryData<int> Sessions => [0, 1, 2, 3, 4, 5];

    [Theory]
    [MemberData(nameof(Sessions))]
    public void MainsAreRejectedAboveTheirLimitInQuietAndActiveTrials(int session)
    {
        RecordingResult above = Of(session, true);
        RecordingResult below = Of(session, false);

        Assert.Equal(Enumerable.Range(First, above.Trials.Length - First + 1), MadeAudit.RejectedFor(above, "cheek", "line-noise"));
        Assert.Empty(MadeAudit.RejectedFor(below, "cheek", "line-noise"));
        Assert.Equal(Enumerable.Range(First, above.Trials.Length - First + 1), MadeAudit.FoundFor(below, "cheek", "line-noise"));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void HarmonicsOfTheMainsAloneAreMainsToo(int session)
    {
        Assert.Equal(Enumerable.Range(1, Of(session, true).Trials.Length), MadeAudit.RejectedFor(Of(session, true), "brow", "line-noise"));
        Assert.Empty(MadeAudit.RejectedFor(Of(session, false), "brow", "line-noise"));
        Assert.All([true, false], isAbove => Assert.Empty(MadeAudit.FoundFor(Of(session, isAbove), "brow", "narrow-band")));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void AToneThatIsNoMainsIsRejectedUnderItsOwnName(int session)
    {
        Assert.Equal(Enumerable.Range(1, Of(session, true).Trials.Length), MadeAudit.RejectedFor(Of(session, true), "eye", "narrow-band"));
        Assert.Empty(MadeAudit.RejectedFor(Of(session, false), "eye", "narrow-band"));
        Assert.All([true, false], isAbove => Assert.Empty(MadeAudit.FoundFor(Of(session, isAbove), "eye", "line-noise")));
    }

    [Theory]
    [InlineData(420)]
    [InlineData(421)]
    [InlineData(422)]
    [InlineData(423)]
    [InlineData(424)]
    public void TooLittleHeadroomIsRejected(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1), 4);
        SessionPlan faulty = MadeAudit.WithConfusersAndMotion(plan, Offset(plan, "eye", 20 / 1.5), Offset(plan, "brow", 20 / 0.7));

        RecordingResult result = MadeAudit.Of(faulty);

        Assert.Equal(Enumerable.Range(1, plan.Trials.Length), MadeAudit.RejectedFor(result, "eye", "drift"));
        Assert.Empty(MadeAudit.RejectedFor(result, "brow", "drift"));
        Assert.Equal(Enumerable.Range(1, plan.Trials.Length), MadeAudit.FoundFor(result, "brow", "drift"));
        Assert.Empty(MadeAudit.RejectedFor(result, "cheek", "drift"));
    }

    [Theory]
    [InlineData(431, 59.7, 60)]
    [InlineData(432, 50.3, 50)]
    public void TheFrequencyOfTheMainsIsFound(ulong seed, double hz, double nominalHz)
    {
        MainsPickup weak = new(MadeAudit.Sites, 1, hz);

        RecordingResult result = MadeAudit.Of(MadeAudit.Session(seed, new Rational(1000, 1), 2) with { Faults = [weak] });

        Assert.Equal(nominalHz, result.Mains.NominalHz);
        Assert.Equal(hz, result.Mains.Hz, 0.01);
    }

    [Theory]
    [InlineData(433, 50)]
    [InlineData(434, 60)]
    [InlineData(435, 50.2)]
    public void HarmonicsWithoutTheirFundamentalNameTheMainsToo(ulong seed, double hz)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1), 2);

        RecordingResult result = MadeAudit.Of(plan with { Faults = [new MainsPickup(["eye"], 7.5, hz) { Harmonics = [0, 0, 1, 0, 0.5] }] });

        Assert.Equal(hz, result.Mains.Hz, 0.01);
        Assert.Equal(plan.Trials.Length, MadeAudit.RejectedFor(result, "eye", "line-noise").Length);
        Assert.Empty(MadeAudit.FoundFor(result, "eye", "narrow-band"));
    }

    /// <summary>Near the second harmonic of 60 Hz, but further than any grid strays: a display, and no mains at all.</summary>
    [Theory]
    [InlineData(436, 119)]
    [InlineData(437, 125)]
    public void AToneBesideAHarmonicIsNoMains(ulong seed, double hz)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1), 2);

        RecordingResult result = MadeAudit.Of(plan with { Faults = [new NarrowPeak(["eye"], 12, hz)] });

        Assert.Equal(plan.Trials.Length, MadeAudit.RejectedFor(result, "eye", "narrow-band").Length);
        Assert.Empty(MadeAudit.FoundFor(result, "eye", "line-noise"));
    }

    private static Drift Offset(SessionPlan plan, string site, double headroomPercent) =>
        new(site, 0, plan.Amplifier.HighestCode * plan.Amplifier.StepUv * (1 - (headroomPercent / 100)));

    private static RecordingResult Of(int number, bool isAbove) => Results.GetOrAdd(
        (number, isAbove),
        key => new Lazy<RecordingResult>(() => MadeAudit.Of(Plan(key.Number, 5 * (key.IsAbove ? 1.5 : 0.7))))).Value;

    private static SessionPlan Plan(int number, double rmsUv)
    {
        SessionPlan plan = MadeAudit.Session(400 + (ulong)number, MadeAudit.Rates[number % MadeAudit.Rates.Length]);
        return MadeAudit.WithConfusersAndMotion(
            plan,
            new MainsPickup(["cheek"], rmsUv) { Span = new FaultSpan(plan.Trials[First - 1].OnsetS - 3, null) },
            new MainsPickup(["brow"], rmsUv) { Harmonics = [0, 0.4, 1] },
            new NarrowPeak(["eye"], rmsUv, 85.3));
    }
}
