using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Console;

/// <summary>Rows of verdict, name, counts and reasons: side by side, or below each other where the terminal is too narrow for that.</summary>
internal sealed class VerdictRows
{
    private const int VerdictColumns = 14;
    private const int NumberColumns = 7;
    private const int FewestReasonColumns = 24;
    private const int FixedColumns = VerdictColumns + 2 + (3 * NumberColumns) + 2;
    private const string Indent = "  ";

    private readonly StringBuilder _text;
    private readonly TerminalStyle _style;
    private readonly string _named;
    private readonly string _counted;
    private readonly bool _isStacked;
    private readonly int _nameColumns;

    /// <summary>Decides how the rows will look.</summary>
    /// <param name="text">Where they go.</param>
    /// <param name="named">What the names are of, above them: <c>channel</c> or <c>recording</c>.</param>
    /// <param name="counted">What the counts are of: <c>trials</c> or <c>channels</c>.</param>
    /// <param name="names">The names of all rows, clean.</param>
    /// <param name="longestName">Columns that a name takes at most, side by side.</param>
    /// <param name="style">What the terminal can show.</param>
    public VerdictRows(StringBuilder text, string named, string counted, IEnumerable<string> names, int longestName, TerminalStyle style)
    {
        _text = text;
        _style = style;
        _named = named;
        _counted = counted;
        int room = style.Columns - FixedColumns - FewestReasonColumns;
        int longest = Math.Min(longestName, Math.Max(named.Length, names.Select(TerminalText.Width).DefaultIfEmpty().Max()));
        _isStacked = longest > room;
        _nameColumns = longest;
    }

    /// <summary>Writes the line above the rows; rows below each other say it themselves.</summary>
    /// <param name="verdict">The word above the verdicts.</param>
    public void Head(string verdict)
    {
        if (!_isStacked)
        {
            _text.Append(TerminalText.Fit(verdict, VerdictColumns)).Append(Indent).Append(TerminalText.Fit(_named, _nameColumns))
                .Append(" reject  quest.   pass  why\n");
        }
    }

    /// <summary>Writes one row.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="name">The name, clean; cut in the middle when it is too long.</param>
    /// <param name="counts">How many of each verdict.</param>
    /// <param name="why">The reasons, clean, each beginning a line; broken at blanks.</param>
    public void Row(Grade verdict, string name, VerdictCounts counts, ImmutableArray<string> why)
    {
        _text.Append(TerminalText.Verdict(verdict, _style)).Append(Indent);
        if (_isStacked)
        {
            Stacked(name, counts, why);
        }
        else
        {
            SideBySide(name, counts, why);
        }
    }

    private void SideBySide(string name, VerdictCounts counts, ImmutableArray<string> why)
    {
        _text.Append(TerminalText.Fit(name, _nameColumns));
        foreach (int count in new[] { counts.Reject, counts.Questionable, counts.Pass })
        {
            _text.Append(count.Plain().PadLeft(NumberColumns));
        }

        int indent = FixedColumns + _nameColumns;
        string between = Indent;
        foreach (string line in why.SelectMany(reason => TerminalText.Wrap(reason, _style.Columns - indent)))
        {
            _text.Append(between).Append(line).Append('\n');
            between = new string(' ', indent);
        }

        _text.Append(why.IsEmpty ? "\n" : string.Empty);
    }

    private void Stacked(string name, VerdictCounts counts, ImmutableArray<string> why)
    {
        int room = _style.Columns - VerdictColumns - Indent.Length;
        _text.Append(TerminalText.Fit(name, Math.Min(TerminalText.Width(name), room))).Append('\n');
        foreach (string part in why.Prepend($"{_counted}: {RunSummary.InWords(counts)}"))
        {
            string indent = Indent;
            foreach (string line in TerminalText.Wrap(part, _style.Columns - (2 * Indent.Length)))
            {
                _text.Append(indent).Append(line).Append('\n');
                indent = Indent + Indent;
            }
        }
    }
}
