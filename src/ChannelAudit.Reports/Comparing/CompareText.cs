using System.Text;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Comparing;

/// <summary>Two audits against each other as text: inputs, counts, then each change with its reason and number.</summary>
public static class CompareText
{
    private static readonly Grade[] Grades = [Grade.Pass, Grade.Questionable, Grade.Reject];

    /// <summary>The text.</summary>
    public static string Render(AuditComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        StringBuilder text = new();
        text.Append("A: ").Append(Plain(comparison.A.Folder)).Append("\nB: ").Append(Plain(comparison.B.Folder)).Append('\n');
        AddList(text, "Made with (A -> B)", ComparedInputs.Lines(comparison.A, comparison.B));
        AddRecordings(text, comparison);
        AddCrossing(text, "Channels", comparison.Channels);
        AddCrossing(text, "Trials, each counted once a channel", comparison.Trials);
        AddChanges(text, comparison);
        return text.ToString();
    }

    private static void AddList(StringBuilder text, string title, IEnumerable<string> lines)
    {
        text.Append('\n').Append(title).Append('\n');
        foreach (string line in lines)
        {
            text.Append("  ").Append(line).Append('\n');
        }
    }

    private static void AddRecordings(StringBuilder text, AuditComparison comparison)
    {
        int shared = comparison.A.Recordings.Length - comparison.OnlyInA.Length;
        AddList(
            text,
            $"Recordings: {shared.Plain()} in both",
            [
                .. comparison.OnlyInA.Select(id => $"only in A: {Plain(id)}"),
                .. comparison.OnlyInB.Select(id => $"only in B: {Plain(id)}"),
                .. comparison.OtherBytes.Select(id => $"other bytes (SHA-256 differs): {Plain(id)}"),
            ]);
    }

    private static void AddCrossing(StringBuilder text, string title, VerdictCrossing crossing)
    {
        text.Append('\n').Append(title).Append(": ").Append(crossing.Total.Plain()).Append(" in both\n")
            .Append("                     B pass  questionable  reject\n");
        foreach (Grade a in Grades)
        {
            text.Append("  A ").Append(VerdictWords.Code(a).PadRight(14))
                .Append(crossing.Count(a, Grade.Pass).Plain().PadLeft(11))
                .Append(crossing.Count(a, Grade.Questionable).Plain().PadLeft(14))
                .Append(crossing.Count(a, Grade.Reject).Plain().PadLeft(8)).Append('\n');
        }
    }

    private static void AddChanges(StringBuilder text, AuditComparison comparison)
    {
        int changes = comparison.ChangedChannels + comparison.ChangedTrials;
        if (changes == 0)
        {
            text.Append(comparison.IsSame ? "\nNo difference in recordings, verdicts or reasons.\n" : "\nNo difference in verdicts or reasons.\n");
            return;
        }

        string channels = Quantities.Many(comparison.ChangedChannels, "channel");
        text.Append("\nChanged: ").Append(channels).Append(" and ").Append(Quantities.Many(comparison.ChangedTrials, "trial")).Append(" (A -> B)\n");
        string? recording = null;
        foreach (ChangeGroup group in comparison.Shown)
        {
            if (!string.Equals(recording, group.First.Recording, StringComparison.Ordinal))
            {
                recording = group.First.Recording;
                text.Append("  ").Append(Plain(recording)).Append('\n');
            }

            text.Append("    ").Append(ChangeWords.Of(group)).Append('\n');
        }

        int shown = comparison.Shown.Sum(group => group.Changes.Length);
        if (changes > shown)
        {
            text.Append("  and ").Append((changes - shown).Plain()).Append(" more; --out FILE.tsv has all of them\n");
        }
    }

    private static string Plain(string text) => TerminalText.Clean(text);
}
