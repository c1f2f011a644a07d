using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Decisions;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Raters;

/// <summary>Decisions that were made without seeing the computed verdict, as labels. Others are no measure of the criteria: who decided had read them.</summary>
/// <param name="Labels">Those that are about what was audited, by recording and in the order of the ledger; withdrawn ones are none.</param>
/// <param name="Stale">How many are about other bytes, or a trial that is another one now.</param>
public sealed record BlindDecisions(ImmutableArray<GivenLabel> Labels, int Stale)
{
    /// <summary>The blind decisions of an audit.</summary>
    /// <exception cref="ChannelAuditException">When a result of the audit cannot be read.</exception>
    public static BlindDecisions Of(StoredAudit audit)
    {
        ArgumentNullException.ThrowIfNull(audit);
        HashSet<string> named = audit.Decisions.Lines.Where(line => line.Blind && line.Recording is not null).Select(line => line.Recording!).ToHashSet(StringComparer.Ordinal);
        StatedDecision[] blind =
        [
            .. audit.Recordings.Where(recording => named.Contains(recording.Id))
                .SelectMany(recording => audit.ResultOf(recording).Decisions?.All ?? [])
                .Where(one => one.Decision is { Blind: true, Verdict: not null }),
        ];
        int gone = named.Except(audit.Recordings.Select(recording => recording.Id), StringComparer.Ordinal)
            .Sum(id => audit.Decisions.About(id).Count(line => line.Blind && audit.Decisions.WithdrawnBy(line.Number) is null));
        return new BlindDecisions(
            [.. blind.Where(one => one.State is DecisionState.InForce or DecisionState.Superseded).Select(one => Label(one.Decision))],
            gone + blind.Count(one => one.State == DecisionState.Stale));
    }

    private static GivenLabel Label(Decision line) => new(
        new ListedPlace(line.Number, line.Recording!, line.Channel, line.Trial?.Number.ToString(CultureInfo.InvariantCulture)), line.By, line.Verdict!.Value);
}
