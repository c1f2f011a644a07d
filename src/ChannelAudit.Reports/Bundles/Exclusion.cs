using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Bundles;

/// <summary>A channel, or a trial of a channel, that is left out of scoring or would be.</summary>
/// <param name="Recording">The recording's id.</param>
/// <param name="Channel">The channel's name.</param>
/// <param name="Trial">The trial's number, or null for the channel as a whole.</param>
/// <param name="Computed">The computed verdict.</param>
/// <param name="Final">The verdict after decisions.</param>
/// <param name="Reasons">Reason codes, worst first.</param>
public sealed record Exclusion(string Recording, string Channel, int? Trial, Grade Computed, Grade Final, ImmutableArray<string> Reasons)
{
    /// <summary>By what it is told from others.</summary>
    public (string Recording, string Channel, int? Trial) Key => (Recording, Channel, Trial);

    /// <summary>All of a recording: channels in file order, each followed by its trials.</summary>
    /// <param name="recording">The result, with the decisions about it.</param>
    /// <param name="least">The mildest verdict that counts: reject, or questionable.</param>
    public static IEnumerable<Exclusion> Of(RecordingResult recording, Grade least)
    {
        ArgumentNullException.ThrowIfNull(recording);
        foreach (ChannelResult channel in recording.Channels)
        {
            Grade final = FinalVerdict.OfChannel(recording, channel);
            if (channel.Verdict >= least || final >= least)
            {
                yield return new Exclusion(recording.Id, channel.Name, null, channel.Verdict, final, channel.Reasons);
            }

            foreach (CellResult cell in channel.Cells)
            {
                Grade ofTrial = FinalVerdict.OfTrial(recording, channel, cell);
                if (cell.Verdict >= least || ofTrial >= least)
                {
                    yield return new Exclusion(recording.Id, channel.Name, cell.Trial, cell.Verdict, ofTrial, cell.Reasons);
                }
            }
        }
    }

    /// <summary>The channels whose samples belong to it: its own, and those that a finding about several channels names.</summary>
    public ImmutableArray<string> ChannelsOf(ChannelResult channel)
    {
        ArgumentNullException.ThrowIfNull(channel);
        CellResult? cell = channel.Cells.FirstOrDefault(one => one.Trial == Trial);
        IEnumerable<Finding> findings = channel.Findings.Concat(cell?.Findings ?? []);
        return [.. findings.SelectMany(finding => finding.Channels).Prepend(Channel).Distinct(StringComparer.Ordinal)];
    }
}
