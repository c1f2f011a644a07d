using System.Collections.Immutable;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Lists;

/// <summary>A lab's list of what it left out of scoring.</summary>
/// <param name="File">The file's name without its folder.</param>
/// <param name="HasVerdicts">Whether a column <c>verdict</c> gives grades; a line that passes or is questionable excludes nothing.</param>
/// <param name="Lines">Its lines in file order.</param>
public sealed record ExclusionList(string File, bool HasVerdicts, ImmutableArray<DeclaredExclusion> Lines)
{
    private static readonly SmallTableKind Kind = new(
        "a list of exclusions", "such a list has a header line with recording, channel, trial and reason, and n/a for all channels or the whole channel");

    /// <summary>Reads a list, as a spreadsheet may have saved it.</summary>
    /// <param name="path">A table with the columns recording, channel, trial and, if wanted, reason and verdict; others are passed over.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, lacks a column, or a line names no recording or an unknown verdict.</exception>
    public static ExclusionList Read(string path)
    {
        SmallTable table = SmallTable.Read(path, Kind);
        ListedPlaces places = new(table, Kind);
        int reason = table.OnlyIndexOf("reason");
        int verdict = table.OnlyIndexOf("verdict");
        return new ExclusionList(
            table.File,
            verdict >= 0,
            [
                .. places.Rows().Select(entry => new DeclaredExclusion(
                    entry.Place,
                    SmallTable.Cell(entry.Row, reason),
                    verdict < 0 ? Grade.Reject : ListErrors.Grade(table.File, entry.Row.Line, "verdict", SmallTable.Cell(entry.Row, verdict)))),
            ]);
    }
}
