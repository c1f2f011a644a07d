using System.Collections.Immutable;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>A lab's list of exclusions against the verdicts of an audit; results are read one recording at a time and not kept.</summary>
public sealed class Reconciliation
{
    /// <summary>As many rows are kept to be shown; all of them go to the receiver.</summary>
    public const int MostShown = 200;

    private readonly int[] _answers = new int[Enum.GetValues<ReconcileAnswer>().Length];

    private Reconciliation(StoredAudit audit, ExclusionList list) => (Audit, List) = (audit, list);

    /// <summary>The audit.</summary>
    public StoredAudit Audit { get; }

    /// <summary>The list.</summary>
    public ExclusionList List { get; }

    /// <summary>The first rows, at most <see cref="MostShown"/>.</summary>
    public ImmutableArray<ReconciledRow> Shown { get; private set; } = [];

    /// <summary>Whether there were more rows to show than are kept.</summary>
    public bool HasMore { get; private set; }

    /// <summary>All rows.</summary>
    public int Total => _answers.Sum();

    /// <summary>Channels that are rejected and were not excluded as a whole.</summary>
    public int KeptChannels { get; private set; }

    /// <summary>Trials, each counted once a channel, that are rejected and were not excluded.</summary>
    public int KeptTrials { get; private set; }

    /// <summary>Trials, each counted once a channel: excluded by the list (0) or not (1) against computed reject (0) or not (1).</summary>
    public TwoWayTable Cells { get; } = new(2);

    /// <summary>Channels likewise: excluded as a whole, or trial by trial altogether.</summary>
    public TwoWayTable Channels { get; } = new(2);

    /// <summary>Trials by the list's grade against the computed verdict, pass to reject; what the list does not name counts as pass.</summary>
    public TwoWayTable Grades { get; } = new(3);

    /// <summary>Excluded trials that are no computed reject themselves, of channels whose own computed verdict is reject.</summary>
    public int ExcludedWithTheirChannel { get; private set; }

    /// <summary>Whether list and audit agree in everything.</summary>
    public bool IsSame => Total == Count(ReconcileAnswer.Supported);

    /// <summary>How many rows have an answer.</summary>
    public int Count(ReconcileAnswer answer) => _answers[(int)answer];

    /// <summary>Holds a list against an audit.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="list">The list.</param>
    /// <param name="receive">Gets the rows: lines about recordings that the audit does not have, then those of each recording, its kept rejects last.</param>
    /// <param name="cancel">Checked for every recording.</param>
    /// <exception cref="ChannelAuditException">When a result cannot be read.</exception>
    public static Reconciliation Of(StoredAudit audit, ExclusionList list, Action<ImmutableArray<ReconciledRow>> receive, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(audit);
        ArgumentNullException.ThrowIfNull(list);
        Reconciliation all = new(audit, list);
        StoredNames names = new(audit.Recordings);
        (DeclaredExclusion Line, (StoredRecording? Found, string? Cause) Recording)[] lines = [.. list.Lines.Select(line => (line, names.Find(line.Place.Recording)))];
        all.Take([.. lines.Where(one => one.Recording.Found is null).Select(one => Unmatched(one.Line, one.Recording.Cause))], receive);
        ILookup<string, DeclaredExclusion> byId = lines.Where(one => one.Recording.Found is not null)
            .ToLookup(one => one.Recording.Found!.Id, one => one.Line, StringComparer.Ordinal);
        foreach (StoredRecording recording in audit.Recordings)
        {
            cancel.ThrowIfCancellationRequested();
            all.Take(new RecordingReconciliation(audit.ResultOf(recording), [.. byId[recording.Id]]).Rows(all), receive);
        }

        return all;
    }

    /// <summary>Counts a channel.</summary>
    internal void AddChannel(bool isExcluded, Grade verdict) => Channels.Add(isExcluded ? 0 : 1, verdict == Grade.Reject ? 0 : 1);

    /// <summary>Counts a trial of a channel.</summary>
    internal void AddCell(Grade declared, Grade verdict, Grade ofChannel)
    {
        Cells.Add(declared == Grade.Reject ? 0 : 1, verdict == Grade.Reject ? 0 : 1);
        Grades.Add((int)declared, (int)verdict);
        ExcludedWithTheirChannel += declared == Grade.Reject && verdict != Grade.Reject && ofChannel == Grade.Reject ? 1 : 0;
    }

    private static bool IsKept(ReconciledRow row) => row.Answer == ReconcileAnswer.RejectedButKept;

    private static ReconciledRow Unmatched(DeclaredExclusion line, string? cause) => new()
    {
        Line = line.Place.Line,
        Recording = line.Place.Recording,
        Channel = line.Place.Channel,
        Trial = line.Place.Trial,
        Answer = ReconcileAnswer.NoMatch,
        Declared = line.Verdict,
        DeclaredReason = line.Reason,
        Note = cause,
    };

    private void Take(ImmutableArray<ReconciledRow> rows, Action<ImmutableArray<ReconciledRow>> receive)
    {
        foreach (ReconciledRow row in rows)
        {
            _answers[(int)row.Answer]++;
            KeptChannels += IsKept(row) && row.Trial is null ? 1 : 0;
            KeptTrials += IsKept(row) && row.Trial is not null ? 1 : 0;
        }

        // Trials that went with a kept channel are in the table; on the screen its one line speaks for them.
        HashSet<string?> kept = rows.Where(row => IsKept(row) && row.Trial is null).Select(row => row.Channel).ToHashSet(StringComparer.Ordinal);
        ReconciledRow[] shown = [.. rows.Where(row => !IsKept(row) || row.Trial is null || !kept.Contains(row.Channel))];
        HasMore |= shown.Length > MostShown - Shown.Length;
        Shown = [.. Shown, .. shown.Take(MostShown - Shown.Length)];
        if (!rows.IsEmpty)
        {
            receive(rows);
        }
    }
}
