using System.Globalization;
using System.Text;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>A list of exclusions against an audit as text: counts, agreement, then each line with its evidence.</summary>
public static class ReconcileText
{
    private static readonly (ReconcileAnswer Answer, string Words)[] Titles =
    [
        (ReconcileAnswer.NoMatch, "Could not be matched"),
        (ReconcileAnswer.NotSupported, "Excluded, not supported: nothing in the audit speaks for it"),
        (ReconcileAnswer.Partly, "Excluded, partly supported: questionable, or only some of its trials or channels"),
        (ReconcileAnswer.RejectedButKept, "Rejected but kept: computed rejects that the list does not exclude"),
        (ReconcileAnswer.Supported, "Excluded, supported"),
    ];

    /// <summary>The text.</summary>
    public static string Render(Reconciliation found)
    {
        ArgumentNullException.ThrowIfNull(found);
        StringBuilder text = new();
        text.Append("Audit: ").Append(Plain(found.Audit.Folder)).Append('\n');
        text.Append("List:  ").Append(Plain(found.List.File)).Append(", ").Append(Quantities.Many(found.List.Lines.Length, "line")).Append('\n');
        AddCounts(text, found);
        AddTable(text, "Channels, excluded as a whole", found.Channels);
        AddTable(text, "Trials, each counted once a channel", found.Cells);
        AddWithChannel(text, found);
        AddGrades(text, found);
        AddRows(text, found);
        return text.ToString();
    }

    private static void AddCounts(StringBuilder text, Reconciliation found)
    {
        text.Append("\nDeclared exclusions against computed verdicts\n");
        AddCount(text, "supported", found.Count(ReconcileAnswer.Supported).Plain());
        AddCount(text, "partly", found.Count(ReconcileAnswer.Partly).Plain());
        AddCount(text, "not supported", found.Count(ReconcileAnswer.NotSupported).Plain());
        AddCount(text, "could not be matched", found.Count(ReconcileAnswer.NoMatch).Plain());
        AddCount(text, "rejected but kept", $"{Quantities.Many(found.KeptChannels, "channel")}, {Quantities.Many(found.KeptTrials, "trial")}");
        if (found.IsSame)
        {
            text.Append("No difference: every line is supported, and nothing that is rejected was kept.\n");
        }
    }

    private static void AddCount(StringBuilder text, string what, string number) => text.Append("  ").Append(what.PadRight(22)).Append(number).Append('\n');

    private static void AddTable(StringBuilder text, string title, TwoWayTable table)
    {
        text.Append('\n').Append(title).Append(": ").Append(table.Total.ToString(CultureInfo.InvariantCulture)).Append('\n')
            .Append("                    computed reject  not reject\n");
        for (int row = 0; row < table.Answers; row++)
        {
            text.Append(row == 0 ? "  excluded        " : "  not excluded    ").Append(Cell(table.Count(row, 0), 17)).Append(Cell(table.Count(row, 1), 12)).Append('\n');
        }

        text.Append("  Cohen's ").Append(KappaWords.Of(table.Kappa())).Append('\n');
    }

    private static void AddWithChannel(StringBuilder text, Reconciliation found)
    {
        if (found.ExcludedWithTheirChannel > 0)
        {
            text.Append("  Of the excluded trials that are not reject, ").Append(found.ExcludedWithTheirChannel.Plain())
                .Append(" are of channels that are reject as a whole.\n");
        }

        text.Append("  Trials of one recording are not independent: the true interval is wider.\n");
    }

    private static void AddGrades(StringBuilder text, Reconciliation found)
    {
        if (!found.List.HasVerdicts)
        {
            return;
        }

        text.Append("\nTrials by the list's verdict; what it does not name counts as pass\n")
            .Append("                       computed pass  questionable  reject\n");
        foreach (Grade row in Enum.GetValues<Grade>())
        {
            text.Append("  list ").Append(VerdictWords.Code(row).PadRight(14)).Append(Cell(found.Grades.Count((int)row, 0), 15))
                .Append(Cell(found.Grades.Count((int)row, 1), 14)).Append(Cell(found.Grades.Count((int)row, 2), 8)).Append('\n');
        }

        text.Append("  Cohen's ").Append(KappaWords.Of(found.Grades.Kappa())).Append('\n');
        text.Append("  With linear weights, ").Append(KappaWords.Of(found.Grades.Kappa(KappaWeights.Linear))).Append('\n');
    }

    private static void AddRows(StringBuilder text, Reconciliation found)
    {
        foreach ((ReconcileAnswer answer, string words) in Titles)
        {
            ReconciledRow[] rows = [.. found.Shown.Where(row => row.Answer == answer)];
            if (rows.Length == 0)
            {
                continue;
            }

            text.Append('\n').Append(words).Append('\n');
            foreach (ReconciledRow row in rows)
            {
                text.Append("  ").Append(ReconcileWords.Of(row)).Append('\n');
            }
        }

        if (found.HasMore)
        {
            text.Append("\nOnly the first ").Append(Reconciliation.MostShown.Plain()).Append(" lines are shown; --out FILE.tsv has all of them.\n");
        }
    }

    private static string Cell(long count, int width) => count.ToString(CultureInfo.InvariantCulture).PadLeft(width);

    private static string Plain(string text) => TerminalText.Clean(text);
}
