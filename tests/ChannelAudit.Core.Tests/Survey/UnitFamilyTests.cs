using ChannelAudit.Recordings;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>Large units that fire a few times here and there are no pops; contacts that are alike are.</summary>
public sealed class UnitFamilyTests
{
    private const int Rate = 2000;

    // Two here, three there: nowhere four others within half a second.
    private static readonly int[] Tops = [4000, 4300, 12_000, 12_260, 12_530, 25_000, 25_310, 31_000, 31_240];

    [Fact]
    public void AUnitIsKnownByItsKinInTheWholeRecording() => Assert.Equal(0, PopsOf(i => 1, ThreePhases));

    [Fact]
    public void SpikesTurnedOverByChanceAreNoUnit() => Assert.Equal(Tops.Length, PopsOf(i => i % 2 == 0 ? 1 : -1, ThreePhases));

    [Fact]
    public void SpikesOfVariousHeightsAreNoUnit() => Assert.Equal(Tops.Length, PopsOf(i => Math.Pow(2.1, i % 3), ThreePhases));

    [Fact]
    public void SteepSpikesOfOneContactAreNoUnit() => Assert.Equal(Tops.Length, PopsOf(i => 1, OnePhase));

    [Fact]
    public void StepsThatDecayAreNoUnit() => Assert.Equal(Tops.Length, PopsOf(i => 1, Step));

    [Fact]
    public void SpikesFarFromEachOtherAreNoUnit()
    {
        int[] alone = [4000, 10_000, 16_000, 22_000, 28_000, 34_000];

        Assert.Equal(alone.Length, PopsOf(i => 1, ThreePhases, alone));
    }

    private static int PopsOf(Func<int, double> height, Func<double, double> shape, int[]? tops = null)
    {
        double[] samples = Made.Noise(51, 1, 20 * Rate);
        int[] places = tops ?? Tops;
        for (int spike = 0; spike < places.Length; spike++)
        {
            for (int i = -100; i <= 100; i++)
            {
                samples[places[spike] + i] += 100 * height(spike) * shape(i / (double)Rate);
            }
        }

        using Recording recording = PlainRecording.Of(new Rational(Rate, 1), Made.Stretches((0, samples.Length)), samples);
        return RecordingSurvey.Of(recording, [(recording.Channels[0], "a")], [], StudySetup.Empty, CancellationToken.None).Channels[0].Pops.All.Count;
    }

    // A wave of 8 ms under a raised cosine of 12 ms: around 125 Hz, as a muscle's.
    private static double ThreePhases(double seconds) =>
        Math.Abs(seconds) < 0.006 ? 0.5 * (1 + Math.Cos(2 * Math.PI * seconds / 0.012)) * Math.Cos(2 * Math.PI * seconds / 0.008) : 0;

    private static double OnePhase(double seconds) => Math.Abs(seconds) < 0.001 ? 0.5 * (1 + Math.Cos(2 * Math.PI * seconds / 0.002)) : 0;

    private static double Step(double seconds) => seconds < 0 ? 0 : Math.Exp(-seconds / 0.006);
}
