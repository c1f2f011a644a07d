using System.Runtime.InteropServices;
using System.Security.Cryptography;
using ChannelAudit.Findings;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

public sealed class DemoSessionTests
{
    private static readonly MadeRecording Made = MadeRecording.Make(DemoSession.Plan);

    [Fact]
    public void EveryCodeIsTheSameOnEveryMachineAndDay()
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (SitePlan site in DemoSession.Plan.Sites)
        {
            hash.AppendData(MemoryMarshal.AsBytes(Made.CodesOf(site.Name)));
        }

        // Made once and kept: a clock, an unseeded number or a system's own sine would change it.
        Assert.Equal("fee79956c7a365d2cfb549e168d0039b27ecacd765b772dcba5974a841af0638", Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    [Fact]
    public void ItHasSixteenScoredTrialsOfTwoConditions()
    {
        PlannedTrial[] scored = [.. DemoSession.Plan.Trials.Where(trial => trial.Role == TrialRole.Scored)];

        Assert.Equal(16, scored.Length);
        Assert.Equal(8, scored.Count(trial => string.Equals(trial.Label, "meadow", StringComparison.Ordinal)));
        Assert.InRange(DemoSession.Plan.DurationS, 150, 240);
    }

    [Fact]
    public void EachFaultMeetsTheTrialsItIsMeantFor()
    {
        Assert.Equal([15, 16, 17, 18, 19, 20, 21], Met(ReasonCode.LineNoise, 5));
        Assert.Equal([10], Met(ReasonCode.Clipping, 0));
        Assert.Equal([14], Met(ReasonCode.Flatline, 200));
        Assert.Equal([7, 8], Met(ReasonCode.Drift, 600));
    }

    [Fact]
    public void TheSqueezeIsClippedForMoreThanOnePercentOfItsTrial()
    {
        PlannedTrial squeeze = DemoSession.Plan.Trials[9];
        double[] samples = Plain.Samples(Made, "eye", squeeze.OnsetS, squeeze.EndS);

        double share = 100.0 * samples.Count(value => Math.Abs(value) >= 199.9) / samples.Length;

        Assert.InRange(share, 2, 12);
        Assert.DoesNotContain(Plain.Samples(Made, "eye", 0, squeeze.OnsetS - 1), value => Math.Abs(value) >= 150);
    }

    [Fact]
    public void TheCheekCarriesItsMainsInTheLastThirdOnly()
    {
        double before = MainsRms(Plain.Samples(Made, "cheek", 2, 22));
        double behind = MainsRms(Plain.Samples(Made, "cheek", 165, 185));

        Assert.Equal(0.3, before, 0.15);
        Assert.Equal(8, behind, 0.6);
    }

    /// <summary>rms in 45 to 55 Hz and around the third and fifth harmonic, the muscle beside them taken off.</summary>
    private static double MainsRms(double[] samples)
    {
        double power = 0;
        foreach (int hz in new[] { 50, 150, 250 })
        {
            double floor = (Plain.Density(samples, 2000, hz - 8, hz - 4) + Plain.Density(samples, 2000, hz + 4, hz + 8)) / 2;
            power += (Plain.Density(samples, 2000, hz - 2, hz + 2) - floor) * 5;
        }

        return Math.Sqrt(Math.Max(0, power));
    }

    private static int[] Met(string reason, double atLeast) =>
    [
        .. Made.Truths
            .Where(truth => string.Equals(truth.Reason, reason, StringComparison.Ordinal) && truth.Size >= atLeast)
            .SelectMany(truth => truth.Trials).Distinct().Order(),
    ];
}
