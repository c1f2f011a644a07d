using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Decisions;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Raters;

/// <summary>Decisions that were made without seeing the computed verdict, as labels. Others are no measure of the criteria: who decided had read them.</summary>
public static class BlindDecisions
{
    /// <summary>The blind decisions of an audit in the order of its ledger, without those that were withdrawn or are about other bytes.</summary>
    public static ImmutableArray<GivenLabel> Of(StoredAudit audit)
    {
        ArgumentNullException.ThrowIfNull(audit);
        Dictionary<string, string> bytes = audit.Recordings.ToDictionary(recording => recording.Id, recording => recording.Sha256, StringComparer.Ordinal);
        return
        [
            .. audit.Decisions.Lines
                .Where(line => line is { Blind: true, Action: DecisionAction.Decide, Recording: not null, Verdict: not null })
                .Where(line => audit.Decisions.WithdrawnBy(line.Number) is null)
                .Where(line => string.Equals(bytes.GetValueOrDefault(line.Recording!), line.RecordingSha256, StringComparison.Ordinal))
                .Select(line => new GivenLabel(
                    new ListedPlace(line.Number, line.Recording!, line.Channel, line.Trial?.Number.ToString(CultureInfo.InvariantCulture)), line.By, line.Verdict!.Value)),
        ];
    }
}
