using System.Globalization;

namespace ChannelAudit.Text;

/// <summary>Every message about a small table that can be said without knowing what its columns mean.</summary>
internal static class SmallTableErrors
{
    /// <summary>The file cannot be opened.</summary>
    public static ChannelAuditException Unreadable(string file, SmallTableKind kind, Exception inner)
    {
        string cause = inner switch
        {
            FileNotFoundException or DirectoryNotFoundException => "it does not exist",
            UnauthorizedAccessException => "access is denied",
            _ => "the system reports an input or output fault",
        };
        return new ChannelAuditException(FaultKind.Usage, $"{file}: cannot be read: {cause}", $"check the name of {TheKind(kind)} and that you may read it", inner);
    }

    /// <summary>A folder was given where a file is needed.</summary>
    public static ChannelAuditException IsFolder(string path) => Fault($"{OneLine.Of(path)}: is a folder, not a file", "give the file inside the folder");

    /// <summary>The file is no text.</summary>
    public static ChannelAuditException Binary(string file, SmallTableKind kind) => Fault($"{file}: not {kind.Noun}: the bytes are no text", kind.Shape);

    /// <summary>The file has no content, or would be waited for.</summary>
    public static ChannelAuditException Empty(string file, SmallTableKind kind) => Fault($"{file}: not {kind.Noun}: the file is empty", $"{kind.Shape}; a pipe or a device cannot be read");

    /// <summary>A table that cannot be meant.</summary>
    public static ChannelAuditException TooLarge(string file, SmallTableKind kind) => Fault($"{file}: not {kind.Noun}: larger than 64 MiB", kind.Shape);

    /// <summary>More columns than any table of ours has.</summary>
    public static ChannelAuditException TooWide(string file, int line, int columns, SmallTableKind kind) =>
        Fault($"{file}, line {Text(line)}: not {kind.Noun}: {Text(columns)} columns", kind.Shape);

    /// <summary>A quote that is never closed.</summary>
    public static ChannelAuditException OpenQuote(string file, Exception inner) =>
        new(FaultKind.Usage, $"{file}: a quote is opened and never closed", "remove the single quote sign, or double it inside a quoted cell", inner);

    /// <summary>A quote that is not closed in its line.</summary>
    public static ChannelAuditException OpenQuote(string file, int line) =>
        Fault($"{file}, line {Text(line)}: a quote is opened and not closed in this line", "remove the single quote sign, or double it inside a quoted cell");

    /// <summary>A row with too many or too few cells.</summary>
    public static ChannelAuditException Ragged(string file, int line, int expected, int found) =>
        Fault(
            $"{file}, line {Text(line)}: expected {Text(expected)} {(expected == 1 ? "column" : "columns")}, found {Text(found)}",
            "give every row one cell a column, n/a for what is missing, and put cells that hold the separator in double quotes");

    /// <summary>The same needed column twice.</summary>
    public static ChannelAuditException Twice(string file, string column) =>
        Fault($"{file}, header: the column \"{OneLine.Of(column)}\" is there twice", "keep one of them, or rename the other");

    private static string TheKind(SmallTableKind kind) => "the " + kind.Noun[(kind.Noun.IndexOf(' ', StringComparison.Ordinal) + 1)..];

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
