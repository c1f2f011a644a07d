using System.Collections.Immutable;
using ChannelAudit.Text;

namespace ChannelAudit.Lists;

/// <summary>A table of labels that people gave.</summary>
public static class LabelList
{
    private static readonly SmallTableKind Kind = new(
        "a table of labels", "such a table has a header line with recording, channel, trial, rater and label, and a line for each label a person gave");

    /// <summary>Reads the labels in file order, as a spreadsheet may have saved them.</summary>
    /// <param name="path">A table with the columns recording, channel, trial, rater and label; others are passed over.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, lacks a column, or a line lacks its recording, rater or a known label.</exception>
    public static ImmutableArray<GivenLabel> Read(string path)
    {
        SmallTable table = SmallTable.Read(path, Kind);
        ListedPlaces places = new(table, Kind);
        int rater = ListErrors.Needed(table, Kind, "rater");
        int label = ListErrors.Needed(table, Kind, "label");
        return
        [
            .. places.Rows().Select(entry => new GivenLabel(
                entry.Place,
                SmallTable.Cell(entry.Row, rater) ?? throw ListErrors.NoRater(table.File, entry.Row.Line),
                ListErrors.Grade(table.File, entry.Row.Line, "label", SmallTable.Cell(entry.Row, label)))),
        ];
    }
}
