using System.Globalization;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Lists;

/// <summary>Every message about a person's list beyond what holds for any small table.</summary>
internal static class ListErrors
{
    /// <summary>Position of a column that is needed.</summary>
    /// <exception cref="ChannelAuditException">When it is missing or there twice.</exception>
    public static int Needed(SmallTable table, SmallTableKind kind, string column)
    {
        int index = table.OnlyIndexOf(column);
        if (index >= 0)
        {
            return index;
        }

        string found = NearestName.Of(column, table.Columns) is { } near
            ? $"did you mean \"{column}\" by \"{OneLine.Of(near)}\"?"
            : $"the columns are {OneLine.List(table.Columns)}";
        throw Fault($"{OneLine.Of(table.File)}, header: no column \"{column}\"; {found}", kind.Shape);
    }

    /// <summary>A line about no recording.</summary>
    public static ChannelAuditException NoRecording(string file, int line) =>
        At(file, line, "no recording", "write the recording's id or file name in every line");

    /// <summary>A label of nobody.</summary>
    public static ChannelAuditException NoRater(string file, int line) => At(file, line, "no rater", "write in every line who gave the label; a letter will do");

    /// <summary>The grade of a word.</summary>
    /// <exception cref="ChannelAuditException">When the cell is empty or the word is none.</exception>
    public static Grade Grade(string file, int line, string column, string? word) => word switch
    {
        null => throw At(file, line, $"no {column}", $"write {GradeWords.List}, or take the line out"),
        _ when GradeWords.All.TryGetValue(word, out Grade grade) => grade,
        _ => throw At(
            file,
            line,
            $"the {column} \"{OneLine.Of(word)}\" is not known{Near(word)}",
            $"write {GradeWords.List}"),
    };

    private static string Near(string word) =>
        NearestName.Of(word, GradeWords.All.Keys.Order(StringComparer.Ordinal)) is { } near ? $"; did you mean \"{near}\"?" : string.Empty;

    private static ChannelAuditException At(string file, int line, string what, string hint) =>
        Fault($"{OneLine.Of(file)}, line {line.ToString(CultureInfo.InvariantCulture)}: {what}", hint);

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);
}
