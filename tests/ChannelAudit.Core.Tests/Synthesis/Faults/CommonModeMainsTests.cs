using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis.Faults;

/// <summary>Mains on the whole head against V·(Z_2 − Z_1)/Z_in, derived by hand (voltage divider; Z is far below Z_in).</summary>
public sealed class CommonModeMainsTests
{
    [Theory]
    [InlineData(100_000, 100, 5)]
    [InlineData(100_000, 20, 25)]
    [InlineData(20_000, 100, 1)]
    public void AnImbalanceOfFiveKiloohmsShowsTheDividersShare(double commonUv, double inputMegohm, double wanted)
    {
        MadeRecording made = Make(new CommonModeMains(commonUv, inputMegohm) { Harmonics = [1] });

        // 4 and 9 kΩ; what the divider leaves out is Z/Z_in, below 1 in 1000.
        Assert.Equal(wanted, Plain.SineRms(Plain.Samples(made, "cheek"), 50, 2000), wanted / 1000);
    }

    [Fact]
    public void EverySiteHasItsOwnShareAndItsOwnTruth()
    {
        MadeRecording made = Make(new CommonModeMains(100_000) { Span = new FaultSpan(2, 12) });

        double[] measured = [.. made.Plan.Sites.Select(site => Plain.Rms(Plain.Samples(made, site.Name, 2, 12)))];

        Assert.Equal(["cheek", "brow", "eye"], made.Truths.Select(truth => Assert.Single(truth.Sites)), StringComparer.Ordinal);
        Assert.All(made.Truths, truth => Assert.Equal((ReasonCode.LineNoise, "line_rms"), (truth.Reason, truth.Measure)));
        foreach ((Truth truth, double rms) in made.Truths.Zip(measured))
        {
            Assert.Equal(truth.Size, rms, 1e-3);
        }

        Assert.Equal(0, Plain.Rms(Plain.Samples(made, "cheek", 0, 2)), 1e-9);
    }

    [Fact]
    public void EqualImpedancesShowNothingAndExchangedOnesTheWaveTurnedOver()
    {
        MadeRecording made = Make(new CommonModeMains(100_000));

        Assert.Equal(0, Plain.Rms(Plain.Samples(made, "brow")), 1e-9);
        Assert.Equal(-1, Plain.Correlation(Plain.Samples(made, "cheek"), Plain.Samples(made, "eye")), 1e-5);
    }

    /// <summary>Cheek 4 and 9 kΩ, brow 5 and 5, eye 6 and 5.</summary>
    private static MadeRecording Make(CommonModeMains mains)
    {
        ImmutableArray<(double First, double Second)> kohm = [(4, 9), (5, 5), (6, 5)];
        return MadeRecording.Make(new SessionPlan
        {
            Seed = 5,
            DurationS = 14,
            Sites = [.. Quiet.Sites.Select((site, i) => site with { FirstKohm = kohm[i].First, SecondKohm = kohm[i].Second })],
            Amplifier = Quiet.Amplifier,
            Faults = [mains],
        });
    }
}
