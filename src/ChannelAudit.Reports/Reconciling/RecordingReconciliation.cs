using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Comparing;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>Holds the declared exclusions of one recording against its verdicts.</summary>
internal sealed class RecordingReconciliation
{
    private readonly RecordingResult _recording;
    private readonly ImmutableArray<DeclaredExclusion> _lines;
    private readonly Dictionary<int, Trial> _trials;
    private readonly Dictionary<(string Channel, int Trial), Grade> _declared = [];
    private readonly HashSet<string> _wholeChannels = new(StringComparer.Ordinal);

    /// <summary>Takes a result and the lines that are about it.</summary>
    public RecordingReconciliation(RecordingResult recording, ImmutableArray<DeclaredExclusion> lines)
    {
        (_recording, _lines) = (recording, lines);
        _trials = recording.Trials.ToDictionary(trial => trial.Number);
    }

    /// <summary>The lines in list order, then what is rejected and was kept; all verdicts are counted.</summary>
    public ImmutableArray<ReconciledRow> Rows(Reconciliation counts)
    {
        ImmutableArray<ReconciledRow> declared = [.. _lines.Select(Answer)];
        return [.. declared, .. _recording.Channels.SelectMany(channel => Kept(channel, counts))];
    }

    private ReconciledRow Answer(DeclaredExclusion line)
    {
        FoundPlace found = FoundPlace.Of(line.Place, _recording);
        ReconciledRow row = new()
        {
            Line = line.Place.Line,
            Recording = _recording.Id,
            Channel = line.Place.Channel,
            Trial = line.Place.Trial,
            Answer = ReconcileAnswer.NoMatch,
            Declared = line.Verdict,
            DeclaredReason = line.Reason,
            Note = found.Cause,
        };
        if (found.Cause is not null)
        {
            return row;
        }

        (ChannelResult Channel, CellResult Cell)[] cells =
        [
            .. found.Channels.SelectMany(channel => channel.Cells.Where(cell => found.Trial is null || cell.Trial == found.Trial).Select(cell => (channel, cell))),
        ];
        Remember(line.Verdict, found, cells);
        Grade[] units = found.Trial is null ? [.. found.Channels.Select(channel => channel.Verdict)] : [.. cells.Select(one => one.Cell.Verdict)];
        return Filled(row, found, cells) with
        {
            Channel = line.Place.Channel is null ? null : found.Channels[0].Name,
            Trial = found.Trial?.Plain(),
            Answer = Judge(line.Verdict, units, [.. cells.Select(one => one.Cell.Verdict)]),
            Note = found.Channels.Length > 1 ? Spread(found, units) : null,
        };
    }

    private void Remember(Grade verdict, FoundPlace found, (ChannelResult Channel, CellResult Cell)[] cells)
    {
        foreach ((ChannelResult channel, CellResult cell) in cells)
        {
            Grade before = _declared.GetValueOrDefault((channel.Name, cell.Trial), Grade.Pass);
            _declared[(channel.Name, cell.Trial)] = before > verdict ? before : verdict;
        }

        if (found.Trial is null && verdict == Grade.Reject)
        {
            _wholeChannels.UnionWith(found.Channels.Select(channel => channel.Name));
        }
    }

    // The verdicts of what was named decide; those of the trials inside a whole channel can still lend it part of a reason.
    private static ReconcileAnswer Judge(Grade declared, Grade[] units, Grade[] cells) =>
        units.All(verdict => verdict == declared) ? ReconcileAnswer.Supported
        : units.Concat(cells).All(verdict => Math.Abs(verdict - declared) > 1) ? ReconcileAnswer.NotSupported
        : declared == Grade.Pass && units.All(verdict => verdict == Grade.Reject) ? ReconcileAnswer.NotSupported
        : ReconcileAnswer.Partly;

    private ReconciledRow Filled(ReconciledRow row, FoundPlace found, (ChannelResult Channel, CellResult Cell)[] cells)
    {
        JudgedPart[] whole = found.Trial is null ? [.. found.Channels.Select(JudgedPart.Of)] : [];
        JudgedPart[] single = [.. cells.Select(one => JudgedPart.Of(one.Channel, one.Cell, _trials[one.Cell.Trial]))];
        JudgedPart[] named = found.Trial is null ? whole : single;
        JudgedPart shown = named.Concat(single).MaxBy(part => part.Verdict)!;
        (Finding Finding, Evidence Evidence)? deciding = Deciding(shown);
        return row with
        {
            Condition = found.Trial is { } trial ? _trials[trial].Label : null,
            Verdict = named.Max(part => part.Verdict),
            Final = found.Trial is null
                ? found.Channels.Max(channel => FinalVerdict.OfChannel(_recording, channel))
                : cells.Max(one => FinalVerdict.OfTrial(_recording, one.Channel, one.Cell)),
            Reasons = [.. named.OrderByDescending(part => part.Verdict).SelectMany(part => part.Reasons).Distinct(StringComparer.Ordinal)],
            NotAssessed = [.. named.SelectMany(part => part.NotAssessed).Distinct(StringComparer.Ordinal)],
            EvidenceReason = deciding?.Finding.Reason,
            Evidence = deciding?.Evidence,
            Cells = VerdictCounts.Of(cells.Select(one => one.Cell.Verdict)),
        };
    }

    // A trial's own number says more of it than the one of the whole channel that covers it.
    private static (Finding Finding, Evidence Evidence)? Deciding(JudgedPart part)
    {
        Finding? worst = part.Reasons
            .SelectMany(reason => new[] { Worst(part, reason, finding => finding.Trial.HasValue != part.IsChannel), Worst(part, reason, _ => true) })
            .FirstOrDefault(finding => finding is not null);
        return worst is not null && ReasonPhrase.Key(worst) is { } evidence ? (worst, evidence) : null;
    }

    private static Finding? Worst(JudgedPart part, string reason, Func<Finding, bool> isWanted) => ReasonPhrase.Worst(part.Findings.Where(finding =>
        finding.Grade == part.Verdict && !finding.Evidence.IsEmpty && string.Equals(finding.Reason, reason, StringComparison.Ordinal) && isWanted(finding)));

    private static string Spread(FoundPlace found, Grade[] units)
    {
        VerdictCounts counts = VerdictCounts.Of(units);
        return $"of {Quantities.Many(found.Channels.Length, "channel")}: {counts.Reject.Plain()} reject, {counts.Questionable.Plain()} questionable, {counts.Pass.Plain()} pass";
    }

    private IEnumerable<ReconciledRow> Kept(ChannelResult channel, Reconciliation counts)
    {
        bool isWhole = _wholeChannels.Contains(channel.Name)
            || (!channel.Cells.IsEmpty && channel.Cells.All(cell => Declared(channel, cell) == Grade.Reject));
        counts.AddChannel(isWhole, channel.Verdict);
        foreach (CellResult cell in channel.Cells)
        {
            counts.AddCell(Declared(channel, cell), cell.Verdict, channel.Verdict);
        }

        if (channel.Verdict == Grade.Reject && !isWhole)
        {
            yield return Row(channel, null);
        }

        foreach (CellResult cell in channel.Cells.Where(cell => cell.Verdict == Grade.Reject && Declared(channel, cell) != Grade.Reject))
        {
            yield return Row(channel, cell);
        }
    }

    private Grade Declared(ChannelResult channel, CellResult cell) => _declared.GetValueOrDefault((channel.Name, cell.Trial), Grade.Pass);

    private ReconciledRow Row(ChannelResult channel, CellResult? cell)
    {
        ReconciledRow row = new()
        {
            Recording = _recording.Id,
            Channel = channel.Name,
            Trial = cell?.Trial.Plain(),
            Answer = ReconcileAnswer.RejectedButKept,
        };
        return Filled(
            row,
            new FoundPlace([channel], cell?.Trial, null),
            [.. channel.Cells.Where(one => cell is null || one.Trial == cell.Trial).Select(one => (channel, one))]);
    }
}
