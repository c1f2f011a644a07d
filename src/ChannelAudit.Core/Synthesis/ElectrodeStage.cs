using System.Collections.Immutable;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis;

/// <summary>Electrodes: their own noise, their impedances, and the gel that joins some of them.</summary>
internal static class ElectrodeStage
{
    /// <summary>Adds each electrode's own noise to what it sees.</summary>
    internal static void SeePotentials(SignalPath path, int site)
    {
        SiteSignals signals = path.Sites[site];
        AddNoise(path, "electrode-1:" + signals.Site.Name, signals.Site.ElectrodeNoiseUv, signals.First);
        AddNoise(path, "electrode-2:" + signals.Site.Name, signals.Site.ElectrodeNoiseUv, signals.Second);
    }

    /// <summary>Adds white noise whose amplitude is stated for the band of 20 to 450 Hz.</summary>
    internal static void AddNoise(SignalPath path, string name, double rmsUv, double[] signal)
    {
        if (rmsUv <= 0)
        {
            return;
        }

        Pcg32 random = NoiseStream.Of(path.Plan.Seed, name);
        double deviation = rmsUv * Math.Sqrt(path.Plan.Rate.Value / 2 / NoiseBand.StatedBandHz);
        for (int i = 0; i < signal.Length; i++)
        {
            signal[i] += deviation * random.NextGaussian();
        }
    }

    /// <summary>Lets current flow through all joints, wherever the set of joints changes anew.</summary>
    internal static void Join(SignalPath path)
    {
        ImmutableArray<Fault> bridges = [.. path.Plan.Faults.Where(fault => !fault.Joints.IsEmpty)];
        ImmutableArray<SampleSpan> spans = [.. bridges.Select(fault => path.Plan.SamplesOf(fault.Span))];
        ImmutableArray<int> edges = [.. spans.SelectMany(span => new[] { span.From, span.To }).Distinct().Order()];
        double[] kohm = Impedances(path.Plan);
        SeeGround(path, bridges);
        for (int i = 0; i + 1 < edges.Length; i++)
        {
            SampleSpan span = new(edges[i], edges[i + 1]);
            ImmutableArray<ElectrodeJoint> joints =
                [.. bridges.Where((_, j) => spans[j].From <= span.From && spans[j].To >= span.To).SelectMany(fault => fault.Joints)];
            Mix(path, ElectrodeNetwork.Mixing(kohm, Numbered(path.Plan, joints)), span);
        }
    }

    /// <summary>Impedance of every electrode in kΩ: first and second of each site in turn, then the ground.</summary>
    internal static double[] Impedances(SessionPlan plan)
    {
        double[] kohm = new double[(2 * plan.Sites.Length) + 1];
        kohm[^1] = plan.GroundKohm;
        for (int i = 0; i < plan.Sites.Length; i++)
        {
            SitePlan site = plan.Sites[i];
            Pcg32 random = NoiseStream.Of(plan.Seed, "impedance:" + site.Name);
            double first = Drawn(random);
            double second = Drawn(random);
            kohm[2 * i] = site.FirstKohm ?? first;
            kohm[(2 * i) + 1] = site.SecondKohm ?? second;
        }

        return kohm;
    }

    /// <summary>The joints with electrodes by number.</summary>
    internal static ImmutableArray<(int One, int Other, double Kohm)> Numbered(
        SessionPlan plan, ImmutableArray<ElectrodeJoint> joints) =>
        [.. joints.Select(joint => (Number(plan, joint.One), Number(plan, joint.Other), joint.Kohm))];

    /// <summary>The position of an electrode: first and second of each site in turn, then the ground.</summary>
    internal static int Number(SessionPlan plan, Electrode electrode) => electrode.IsGround
        ? 2 * plan.Sites.Length
        : (2 * plan.SiteIndex(electrode.Site)) + (electrode.IsSecond ? 1 : 0);

    /// <summary>Gives the ground a potential where a joint leads to it.</summary>
    private static void SeeGround(SignalPath path, ImmutableArray<Fault> bridges)
    {
        if (bridges.Any(fault => fault.Joints.Any(joint => joint.One.IsGround || joint.Other.IsGround)))
        {
            path.Ground = new double[path.Plan.Length];
            AddNoise(path, "electrode-ground", path.Plan.GroundNoiseUv, path.Ground);
        }
    }

    private static double Drawn(Pcg32 random) => 5 * (0.7 + (0.6 * random.NextDouble()));

    private static void Mix(SignalPath path, double[,] mixing, SampleSpan span)
    {
        double[][] sites = [.. path.Sites.SelectMany(site => new[] { site.First, site.Second })];
        double[][] potentials = path.Ground.Length > 0 ? [.. sites, path.Ground] : sites;
        int electrodes = potentials.Length;
        double[] seen = new double[electrodes];
        for (int i = span.From; i < span.To; i++)
        {
            for (int row = 0; row < electrodes; row++)
            {
                double sum = 0;
                for (int column = 0; column < electrodes; column++)
                {
                    sum += mixing[row, column] * potentials[column][i];
                }

                seen[row] = sum;
            }

            for (int row = 0; row < electrodes; row++)
            {
                potentials[row][i] = seen[row];
            }
        }
    }
}
