using ChannelAudit.Findings;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis.Faults;

/// <summary>A lead that has come off: nothing of the muscle, mains and noise of stated size, or the rail; formulas by hand.</summary>
public sealed class LeadOffTests
{
    private static readonly FaultSpan Off = new(5, 15);

    [Fact]
    public void TheOpenInputShowsMainsAndNoiseOfTheStatedSize()
    {
        double[] inside = Plain.Samples(Make(new LeadOff("cheek") { Span = Off }), "cheek", 5, 15);

        double mains = Plain.SineRms(inside, 50, 2000);
        double rest = Math.Sqrt(Math.Pow(Plain.Rms(inside), 2) - (mains * mains));

        // White noise stated for 430 Hz, seen up to 1000 Hz; a sine fitted to noise of 46 µV over 20 000 samples is off by 0.5.
        Assert.Equal(200, mains, 1.0);
        Assert.Equal(30 * Math.Sqrt(1000 / 430.0), rest, 1.0);
    }

    [Fact]
    public void NothingOfTheMuscleIsLeftUntilTheLeadIsBack()
    {
        MadeRecording free = Make();
        MadeRecording made = Make(new LeadOff("cheek") { Span = Off, MainsUv = 0, NoiseUv = 0.5 });

        double shared = Plain.Correlation(Plain.Samples(free, "cheek", 5, 15), Plain.Samples(made, "cheek", 5, 15));

        // 20 000 samples: independent signals correlate by less than 4/√20000 · 2 for spectra as narrow as a muscle's.
        Assert.InRange(Math.Abs(shared), 0, 0.06);
        Assert.True(made.CodesOf("cheek")[..10000].SequenceEqual(free.CodesOf("cheek")[..10000]));
        Assert.True(made.CodesOf("cheek")[30000..].SequenceEqual(free.CodesOf("cheek")[30000..]));
        Assert.True(made.CodesOf("eye").SequenceEqual(free.CodesOf("eye")));
    }

    [Fact]
    public void TheTruthNamesWhatTheOpenInputShows()
    {
        MadeRecording made = Make(new LeadOff("cheek") { Span = Off, MainsUv = 80, NoiseUv = 12 });

        Assert.Equal(
            [(ReasonCode.LineNoise, "line_rms", 80), (ReasonCode.NoiseFloor, "rest_rms", 12), (ReasonCode.WeakResponse, "amplitude_gain", 0.0)],
            made.Truths.Select(truth => (truth.Reason, truth.Measure, truth.Size)));
    }

    [Fact]
    public void AnAmplifierThatIsDrivenToItsRailStaysThere()
    {
        MadeRecording made = Make(new LeadOff("cheek") { Span = Off, AtRail = true });

        ReadOnlySpan<int> codes = made.CodesOf("cheek");

        Assert.False(codes[10000..30000].ContainsAnyExcept(made.HighestCodeOf("cheek")));
        Assert.False(codes[..10000].Contains(made.HighestCodeOf("cheek")));
        Assert.Equal(
            [("clipped", 100), ("clipped_run", 10000), ("amplitude_gain", 0.0)], made.Truths.Select(truth => (truth.Measure, truth.Size)));
    }

    private static MadeRecording Make(params Fault[] faults) => MadeRecording.Make(new SessionPlan
    {
        Seed = 5,
        DurationS = 20,
        Sites = [.. Quiet.Sites.Select(site => site with { RestUv = 10 })],
        Amplifier = Quiet.Amplifier,
        Faults = [.. faults],
    });
}
