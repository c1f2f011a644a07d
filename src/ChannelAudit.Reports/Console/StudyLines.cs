using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Studies;

namespace ChannelAudit.Reports.Console;

/// <summary>Recordings other than the rest of their study, for the terminal.</summary>
public static class StudyLines
{
    private const int MostLines = 8;

    /// <summary>The whole text with a blank line behind it; empty when nothing was found.</summary>
    /// <param name="odd">What was found.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Render(ImmutableArray<StudyFinding> odd, TerminalStyle style)
    {
        if (odd.IsEmpty)
        {
            return string.Empty;
        }

        StringBuilder text = new();
        Add(text, $"{StudyWords.Title}, changes no verdict:", style);
        foreach (StudyFinding one in odd.Take(MostLines))
        {
            string channel = one.Channel is { } name ? $", {TerminalText.Clean(name)}" : string.Empty;
            Add(text, $"- {StudyWords.Kind(one.Kind)}: {TerminalText.Clean(StudyWords.Recordings(one.Recordings))}{channel}: {TerminalText.Clean(one.Text)}", style);
        }

        if (odd.Length > MostLines)
        {
            Add(text, $"{Quantities.Many(odd.Length - MostLines, "more line")}: see \"{StudyWords.Title}\" in report.html.", style);
        }

        return TerminalText.Plain(text.Append('\n').ToString(), style);
    }

    private static void Add(StringBuilder text, string line, TerminalStyle style)
    {
        foreach (string part in TerminalText.Wrap(line, style.Columns))
        {
            text.Append(part).Append('\n');
        }
    }
}
