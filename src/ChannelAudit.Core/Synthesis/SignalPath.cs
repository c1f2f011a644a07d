using System.Collections.Immutable;

namespace ChannelAudit.Synthesis;

/// <summary>The signals of a session on their way from the muscles to the codes; faults write into it.</summary>
internal sealed class SignalPath
{
    private SignalPath(SessionPlan plan)
    {
        Plan = plan;
        Sites = [.. plan.Sites.Select(site => new SiteSignals(plan.Length, site))];
    }

    /// <summary>What is made.</summary>
    internal SessionPlan Plan { get; }

    /// <summary>The signals of each site in the order of the plan.</summary>
    internal ImmutableArray<SiteSignals> Sites { get; }

    /// <summary>Potential at the ground electrode; empty unless gel joins a site to it, since a difference does not show it otherwise.</summary>
    internal double[] Ground { get; set; } = [];

    /// <summary>Stretches that no channel has, in samples.</summary>
    internal List<SampleSpan> Gaps { get; } = [];

    /// <summary>Makes all signals: the order of the lines is the way of the signal.</summary>
    internal static SignalPath Run(SessionPlan plan)
    {
        SignalPath path = new(plan);
        path.ForEachSite(static (path, i) => MuscleLevels.Fill(path.Plan, i, path.Sites[i].LevelUv));
        path.ForEachFault(static (fault, path) => fault.ShapeLevels(path));
        path.ForEachSite(MuscleSources.Fill);
        path.ForEachFault(static (fault, path) => fault.AddSources(path));
        path.ForEachSite(ElectrodeStage.SeePotentials);
        ElectrodeStage.Join(path);
        path.ForEachSite(static (path, i) => path.Sites[i].TakeDifference());
        path.ForEachFault(static (fault, path) => fault.AddInput(path));
        path.ForEachSite(AmplifierStage.Amplify);
        path.ForEachFault(static (fault, path) => fault.LimitAmplifier(path));
        path.ForEachSite(AmplifierStage.Convert);
        path.ForEachFault(static (fault, path) => fault.EditCodes(path));
        path.ForEachFault(static (fault, path) => fault.LoseSamples(path));
        return path;
    }

    /// <summary>The signals of a site.</summary>
    /// <param name="name">Its name.</param>
    internal SiteSignals Site(string name) => Sites[Plan.SiteIndex(name)];

    private void ForEachSite(Action<SignalPath, int> step)
    {
        for (int i = 0; i < Sites.Length; i++)
        {
            step(this, i);
        }
    }

    private void ForEachFault(Action<Fault, SignalPath> step)
    {
        foreach (Fault fault in Plan.Faults)
        {
            step(fault, this);
        }
    }
}
