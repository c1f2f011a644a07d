using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis;

/// <summary>A made recording with everything that is true of it.</summary>
/// <remarks>The signals are complete in memory: codes of the whole time axis, 4 bytes a sample.</remarks>
public sealed class MadeRecording
{
    private readonly SignalPath path;

    private MadeRecording(SignalPath path)
    {
        this.path = path;
        Plan = path.Plan;
        Channels = [.. path.Sites.Select((_, i) => MadeChannels.Describe(path, i))];
        Truths = [.. Plan.Faults.SelectMany(fault => fault.TruthsIn(this)), .. TrialsBehindTheEnd()];
    }

    /// <summary>The plan it was made from.</summary>
    public SessionPlan Plan { get; }

    /// <summary>The channels as a reader would describe them, one a site.</summary>
    public ImmutableArray<Channel> Channels { get; }

    /// <summary>What an audit should find, in the order of the faults.</summary>
    public ImmutableArray<Truth> Truths { get; }

    /// <summary>Makes the recording.</summary>
    /// <param name="plan">What to make.</param>
    /// <exception cref="ArgumentException">When the plan names a site it does not have, or joins electrodes in a loop.</exception>
    public static MadeRecording Make(SessionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new MadeRecording(SignalPath.Run(plan));
    }

    /// <summary>The codes of the whole time axis, those that the file loses included.</summary>
    /// <param name="site">The site's name.</param>
    public ReadOnlySpan<int> CodesOf(string site) => path.Site(site).Codes;

    /// <summary>The channel of a site.</summary>
    /// <param name="site">The site's name.</param>
    public Channel ChannelOf(string site) => Channels[Plan.SiteIndex(site)];

    /// <summary>The lowest code of a channel's converter.</summary>
    /// <param name="site">The site's name.</param>
    public int LowestCodeOf(string site) => path.Site(site).LowestCode!.Value;

    /// <summary>The highest code of a channel's converter.</summary>
    /// <param name="site">The site's name.</param>
    public int HighestCodeOf(string site) => path.Site(site).HighestCode!.Value;

    /// <summary>The offset that was drawn for a channel, in µV.</summary>
    /// <param name="site">The site's name.</param>
    public double OffsetUv(string site) => path.Site(site).OffsetUv;

    /// <summary>The slow settling that was drawn for a channel, in µV/min.</summary>
    /// <param name="site">The site's name.</param>
    public double SettlingUvPerMin(string site) => path.Site(site).SettlingUvPerMin;

    /// <summary>Impedances of a site's two electrodes in kΩ.</summary>
    /// <param name="site">The site's name.</param>
    public (double First, double Second) KohmOf(string site)
    {
        double[] kohm = ElectrodeStage.Impedances(Plan);
        int index = 2 * Plan.SiteIndex(site);
        return (kohm[index], kohm[index + 1]);
    }

    /// <summary>The recording as a reader would open it, without a file.</summary>
    public Recording Open() => new()
    {
        FileName = Plan.Amplifier.Bits > 16 ? "made.bdf" : "made.edf",
        Format = (Plan.Amplifier.Bits > 16 ? "BDF+" : "EDF+") + (HasGaps ? "D" : "C"),
        Channels = Channels,
        Annotations = MadeChannels.Annotations(Plan),
        DurationS = Channels.IsEmpty ? 0 : Plan.Rate.SecondsAt(Channels.Max(channel => channel.TimelineLength)),
        Samples = new ArraySampleSource(Channels, [.. path.Sites.Select(site => site.Codes)], Plan.Amplifier.StepUv),
    };

    /// <summary>Whether the recording paused, so that only the discontinuous formats can hold it.</summary>
    public bool HasGaps => path.Gaps.Count > 0;

    /// <summary>Whether no channel has a sample.</summary>
    /// <param name="sample">Its index on the time axis.</param>
    internal bool IsInGap(int sample) => path.Gaps.Exists(gap => sample >= gap.From && sample < gap.To);

    private IEnumerable<Truth> TrialsBehindTheEnd()
    {
        for (int i = 0; i < Plan.Trials.Length; i++)
        {
            PlannedTrial trial = Plan.Trials[i];
            if (trial.EndS > Plan.DurationS)
            {
                decimal lost = Math.Min(trial.EndS - Plan.DurationS, trial.DurationS);
                yield return new Truth(
                    ReasonCode.Dropout,
                    [.. Plan.Sites.Select(site => site.Name)],
                    "missing",
                    (double)(100 * lost / trial.DurationS),
                    "%",
                    FaultSpan.Of(trial),
                    [i + 1]);
            }
        }
    }
}
