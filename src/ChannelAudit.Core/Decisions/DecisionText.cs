using System.Globalization;
using System.Text;

namespace ChannelAudit.Decisions;

/// <summary>What a person may write as a name or a reason: one line of text of bounded length.</summary>
/// <remarks>Markup and formulas are text like any other: what shows them, shows them as text. Only what a terminal or an editor would obey is refused.</remarks>
public static class DecisionText
{
    /// <summary>Characters of a name at most.</summary>
    public const int LongestName = 200;

    /// <summary>Characters of a reason at most.</summary>
    public const int LongestReason = 2000;

    /// <summary>The text without blanks around it.</summary>
    /// <param name="what">What it is, for messages: <c>the reason</c>.</param>
    /// <param name="text">As it was given.</param>
    /// <param name="most">Characters at most.</param>
    /// <exception cref="ChannelAuditException">When it is empty, too long, or holds a control character or a line end.</exception>
    public static string Checked(string what, string text, int most)
    {
        ArgumentNullException.ThrowIfNull(text);
        string trimmed = text.Trim();
        if (trimmed.Length == 0)
        {
            throw LedgerErrors.EmptyText(what);
        }

        if (trimmed.Length > most)
        {
            throw LedgerErrors.LongText(what, trimmed.Length, most);
        }

        int place = 1;
        foreach (Rune rune in trimmed.EnumerateRunes())
        {
            // Half a surrogate pair is read as U+FFFD.
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
                || rune == Rune.ReplacementChar)
            {
                throw LedgerErrors.ControlCharacter(what, rune.Value, place);
            }

            place++;
        }

        return trimmed;
    }
}
