using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Recordings;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Digests;

/// <summary>The decisions of a run in short.</summary>
public sealed record DecisionsDigest
{
    /// <summary>How far the ledger had grown.</summary>
    public required LedgerMark Mark { get; init; }

    /// <summary>Decisions that hold.</summary>
    public int InForce { get; init; }

    /// <summary>Decisions whose place a later one took.</summary>
    public int Superseded { get; init; }

    /// <summary>Decisions that were taken back.</summary>
    public int Withdrawn { get; init; }

    /// <summary>Decisions that are not applied, since what they were about has changed or is gone.</summary>
    public int Stale { get; init; }

    /// <summary>Those of the stale ones whose recording is not in the run: line and recording, in order.</summary>
    public ImmutableArray<(int Line, string Recording)> Elsewhere { get; init; } = [];

    /// <summary>What to tell of a line that was broken off; part of no file.</summary>
    public Warning? Torn { get; init; }

    /// <summary>Warnings that belong to no recording of the run.</summary>
    public IEnumerable<Warning> Warnings =>
    [
        .. Elsewhere.Select(one => new Warning(
            Ledger.FileName,
            FormattableString.Invariant($"line {one.Line}"),
            $"not applied: there is no recording '{OneLine.Of(one.Recording)}' in this audit; withdraw it if that is meant")),
        .. Torn is { } torn ? new[] { torn } : [],
    ];

    /// <summary>Counts the decisions of a ledger.</summary>
    /// <param name="ledger">The ledger.</param>
    /// <param name="recordings">Ids of the recordings of the run, with the decisions about each.</param>
    /// <returns>Null when nothing was decided and nothing is to be told.</returns>
    public static DecisionsDigest? Of(Ledger ledger, IReadOnlyDictionary<string, RecordingDecisions?> recordings)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        if (ledger.Lines.IsEmpty && ledger.Torn is null)
        {
            return null;
        }

        RecordingDecisions[] known = [.. recordings.Values.OfType<RecordingDecisions>()];
        Decision[] elsewhere = [.. ledger.Lines.Where(line => line.Action == DecisionAction.Decide && !recordings.ContainsKey(line.Recording!))];
        (int, string)[] missed = [.. elsewhere.Where(line => ledger.WithdrawnBy(line.Number) is null).Select(line => (line.Number, line.Recording!))];
        return new DecisionsDigest
        {
            Mark = ledger.Mark,
            InForce = known.Sum(one => one.Count(DecisionState.InForce)),
            Superseded = known.Sum(one => one.Count(DecisionState.Superseded)),
            Withdrawn = known.Sum(one => one.Count(DecisionState.Withdrawn)) + elsewhere.Length - missed.Length,
            Stale = known.Sum(one => one.Count(DecisionState.Stale)) + missed.Length,
            Elsewhere = [.. missed],
            Torn = ledger.Torn,
        };
    }
}
