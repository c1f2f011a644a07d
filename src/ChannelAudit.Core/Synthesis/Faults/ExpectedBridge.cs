using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>What joints do to channels at rest, from the powers of the plan, without looking at samples.</summary>
internal sealed class ExpectedBridge
{
    private readonly SessionPlan plan;
    private readonly double[,] mixing;
    private readonly double bandShareOfMuscle = NoiseBand.Muscle.ShareBetween(FromHz, ToHz);

    // The band in which correlations are measured (design: pairs).
    private const double FromHz = 30;
    private const double ToHz = 250;

    internal ExpectedBridge(SessionPlan plan, ImmutableArray<ElectrodeJoint> joints)
    {
        this.plan = plan;
        mixing = ElectrodeNetwork.Mixing(ElectrodeStage.Impedances(plan), ElectrodeStage.Numbered(plan, joints));
    }

    /// <summary>Amplitude of the site's own muscle over what it would be without joints.</summary>
    internal double GainOf(string site)
    {
        int first = 2 * plan.SiteIndex(site);
        double fromFirst = mixing[first, first] - mixing[first + 1, first];
        double fromSecond = mixing[first, first + 1] - mixing[first + 1, first + 1];
        return (fromFirst - fromSecond) / 2;
    }

    /// <summary>How much of the ground electrode's potential a site's channel shows: k of methods 1.2.</summary>
    internal double GroundShareOf(string site) => Math.Abs(Weight(plan.SiteIndex(site), 2 * plan.Sites.Length));

    /// <summary>Correlation of two channels at rest.</summary>
    internal double RestCorrelation(string one, string other)
    {
        int a = plan.SiteIndex(one);
        int b = plan.SiteIndex(other);
        return Covariance(a, b) / Math.Sqrt(Covariance(a, a) * Covariance(b, b));
    }

    private double Covariance(int a, int b)
    {
        double noiseShare = (ToHz - FromHz) / NoiseBand.StatedBandHz;
        double amplifier = plan.Amplifier.NoiseUv * plan.Amplifier.NoiseUv * noiseShare;
        double sum = a == b ? amplifier : 0;
        for (int i = 0; i < plan.Sites.Length; i++)
        {
            SitePlan site = plan.Sites[i];
            double muscle = site.RestUv * site.RestUv * bandShareOfMuscle;
            double electrode = site.ElectrodeNoiseUv * site.ElectrodeNoiseUv * noiseShare;
            double mean = site.Asymmetry * site.Asymmetry;
            double same = (muscle * (mean + 0.25)) + electrode;
            double cross = muscle * (mean - 0.25);
            (double a1, double a2) = (Weight(a, 2 * i), Weight(a, (2 * i) + 1));
            (double b1, double b2) = (Weight(b, 2 * i), Weight(b, (2 * i) + 1));
            sum += (same * ((a1 * b1) + (a2 * b2))) + (cross * ((a1 * b2) + (a2 * b1)));
        }

        return sum;
    }

    /// <summary>How much of an electrode's potential a channel shows.</summary>
    private double Weight(int channel, int electrode) => mixing[2 * channel, electrode] - mixing[(2 * channel) + 1, electrode];
}
