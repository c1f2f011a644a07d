using ChannelAudit.Recordings;
using ChannelAudit.Synthesis;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>
/// Mean density in the top fifth of the band (364 to 450 Hz) over that in 80 to 150 Hz, by a direct DFT. Expected values are the
/// project's calculated ones: contraction 0.07, rest 0.08 to 0.43, joined inputs 0.95 to 1.01.
/// </summary>
public sealed class SpectrumShapeTests
{
    [Theory]
    [InlineData(2000)]
    [InlineData(1000)]
    public void AContractionIsNotWhite(int rateHz) => Assert.InRange(Whiteness(rateHz, 25), 0.05, 0.09);

    [Theory]
    [InlineData(3.0)]
    [InlineData(1.5)]
    [InlineData(0.8)]
    public void RestIsALittleWhite(double restUv) => Assert.InRange(Whiteness(2000, restUv), 0.07, 0.43);

    [Fact]
    public void NoiseAloneIsWhite() => Assert.InRange(Whiteness(2000, 0), 0.9, 1.1);

    [Fact]
    public void NoiseIsStatedForTheBandOf20To450Hz()
    {
        double[] samples = Rest(2000, 0);

        // Two electrodes of 0.5 µV and an amplifier of 0.45 µV; density times 430 Hz, from a part of the band.
        double power = Plain.Density(samples, 2000, 100, 200) * 430;

        Assert.Equal(Math.Sqrt((2 * 0.25) + (0.45 * 0.45)), Math.Sqrt(power), 0.02);
    }

    [Fact]
    public void TheShapeHasItsPowerWhereTheFiltersPutIt()
    {
        double[] samples = Rest(2000, 1000);

        double share = Plain.Density(samples, 2000, 80, 150) * 71 / Math.Pow(Plain.Rms(samples), 2);

        Assert.Equal(NoiseBand.Muscle.ShareBetween(79.5, 150.5), share, 0.03);
    }

    private static double Whiteness(int rateHz, double restUv)
    {
        double[] samples = Rest(rateHz, restUv);
        return Plain.Density(samples, rateHz, 364, 450) / Plain.Density(samples, rateHz, 80, 150);
    }

    private static double[] Rest(int rateHz, double restUv)
    {
        SessionPlan plan = new()
        {
            Seed = 6,
            DurationS = 20,
            Rate = new Rational(rateHz, 1),
            Sites = [SitePlan.Face[0] with { RestUv = restUv }],
            Amplifier = new AmplifierPlan { OffsetUv = 0, SettlingUvPerMin = 0, Bits = 24, StepUv = 0.01 },
        };
        return Plain.Samples(MadeRecording.Make(plan), "cheek");
    }
}
