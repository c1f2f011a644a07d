using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Recordings.Text;

/// <summary>Every message about a delimited text that cannot be read.</summary>
internal static class TextErrors
{
    /// <summary>The file has no content.</summary>
    public static ChannelAuditException Empty(string file) =>
        Fault($"{file}: not a recording: the file is empty", "export the recording again, and check that the export finished");

    /// <summary>The file is no text.</summary>
    public static ChannelAuditException Binary(string file) =>
        Fault($"{file}: not a recording: the bytes are no text and no EDF or BDF header", "give an EDF, EDF+ or BDF file, or delimited text with one column a channel");

    /// <summary>The file cannot be opened or read.</summary>
    public static ChannelAuditException Unreadable(string file, Exception inner) =>
        Fault($"{file}: cannot be read: {Sentence(inner)}", "check that the file exists, is not open elsewhere and may be read by you", inner);

    /// <summary>No columns of numbers.</summary>
    public static ChannelAuditException NoTable(string file) =>
        Fault($"{file}: not a recording: no table of numbers found", "give delimited text with one column a channel and one row a sample");

    /// <summary>More columns than any recording has channels.</summary>
    public static ChannelAuditException TooWide(string file, int line, int most) =>
        Fault($"{file}, line {Text(line)}: more than {Text(most)} columns", "give one column a channel and one row a sample: a table with one row a channel is to be turned round");

    /// <summary>The header is that of an events table.</summary>
    public static ChannelAuditException IsEventsTable(string file, int line) =>
        Fault($"{file}, line {Text(line)}: an events table (onset, duration), not a recording", "give the recording itself, and this file with --events");

    /// <summary>A comma between two whole numbers under one name.</summary>
    public static ChannelAuditException AmbiguousComma(string file, int line, string text) =>
        Fault(
            $"{file}, line {Text(line)}: \"{OneLine.Of(text)}\" is one number with a decimal comma or two columns, and the header names one",
            "export with decimal dots, or with semicolons or tabs between columns");

    /// <summary>Header and rows differ in width.</summary>
    public static ChannelAuditException HeaderMismatch(string file, int headerLine, int names, int dataLine, int cells) =>
        Fault(
            $"{file}, line {Text(headerLine)}: the header names {Count(names, "column")}, but line {Text(dataLine)} has {Text(cells)}",
            "give every column one name; if decimal commas are used, separate columns with semicolons or tabs");

    /// <summary>A row with too many or too few cells.</summary>
    public static ChannelAuditException Ragged(string file, long line, int expected, int found) =>
        Fault(
            $"{file}, line {Text(line)}: expected {Count(expected, "column")}, found {Text(found)}",
            "repair or remove that row, or export the recording again");

    /// <summary>A word in a column of numbers.</summary>
    public static ChannelAuditException Word(string file, long line, string column, string text) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": \"{OneLine.Of(text)}\" is not a number",
            "write n/a for a missing sample, or correct the cell");

    /// <summary>An infinite number.</summary>
    public static ChannelAuditException Infinite(string file, long line, string column, string text) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": \"{OneLine.Of(text)}\" is not a finite number",
            "write n/a for a missing sample, or correct the cell");

    /// <summary>A number beyond any voltage.</summary>
    public static ChannelAuditException Beyond(string file, long line, string column, string text) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": \"{OneLine.Of(text)}\" is no voltage that an amplifier gives",
            "write n/a for a missing sample, or correct the cell");

    /// <summary>No rate anywhere.</summary>
    public static ChannelAuditException NoRate(string file) =>
        Fault($"{file}: no time column and no sampling rate", "state sampling_hz under [recording] in the setup file, for instance sampling_hz = 2000.0");

    /// <summary>A counter or an unnamed evenly rising column, and no rate.</summary>
    public static ChannelAuditException CounterWithoutRate(string file, string column) =>
        Fault(
            $"{file}: column \"{OneLine.Of(column)}\" counts samples but does not say how long one lasts",
            "state sampling_hz under [recording] in the setup file, for instance sampling_hz = 2000.0");

    /// <summary>A row without a time.</summary>
    public static ChannelAuditException NoTime(string file, long line, string column) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": no time in a row of samples",
            "fill in the time, or remove the column and state sampling_hz in the setup file");

    /// <summary>A time in another form than the others.</summary>
    public static ChannelAuditException BadTime(string file, long line, string column, string text) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": \"{OneLine.Of(text)}\" is not a time like the others in this column",
            "correct the cell, or remove the column and state sampling_hz in the setup file");

    /// <summary>Time that runs backwards.</summary>
    public static ChannelAuditException Backwards(string file, long line, string column, string before, string now) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": time runs backwards, from {before} to {now}",
            "export the recording in order of time, one recording a file");

    /// <summary>The same time twice.</summary>
    public static ChannelAuditException Repeated(string file, long line, string column, string now) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": the time {now} is there twice",
            "export times with more digits, or remove the column and state sampling_hz in the setup file");

    /// <summary>One row only.</summary>
    public static ChannelAuditException TooShort(string file) =>
        Fault($"{file}: one row of samples only: no rate can be told from it", "give a longer recording, or state sampling_hz in the setup file and remove the time column");

    /// <summary>Times from which no rate can be told.</summary>
    public static ChannelAuditException Irregular(string file, string column, string found) =>
        Fault(
            $"{file}, column \"{OneLine.Of(column)}\": no sampling rate holds: {found}",
            "export evenly spaced samples with enough digits, or remove the column and state sampling_hz in the setup file");

    /// <summary>Not one column to audit.</summary>
    public static ChannelAuditException NoChannel(string file) =>
        Fault($"{file}: no channel to audit: every column is time, a marker, text or no voltage", "check the labels and units in the header");

    /// <summary>A quote that is never closed.</summary>
    public static ChannelAuditException OpenQuote(string file, Exception inner) =>
        Fault($"{file}: a quote is opened and never closed", "remove the single quote sign, or double it inside a quoted cell", inner);

    /// <summary>A rate that no muscle is recorded at.</summary>
    public static ChannelAuditException BadRate(string file, double rateHz) => Fault(
        FormattableString.Invariant($"{file}: a sampling rate of {rateHz:G6} Hz is not possible: {RecordingBounds.LeastRateHz:#,0} to {RecordingBounds.MostRateHz:#,0} Hz"),
        "correct the times, the lines above the table or sampling_hz in the setup file, or name the time column's unit, as in \"time (ms)\"");

    /// <summary>No room for the spooled numbers.</summary>
    public static ChannelAuditException NoTemporaryFile(string file, Exception inner) =>
        new(FaultKind.Usage, $"{file}: the temporary file for its numbers cannot be written: {Sentence(inner)}", "make room in the folder for temporary files, or name another with TMPDIR", inner);

    private static ChannelAuditException Fault(string message, string hint, Exception? inner = null) => new(FaultKind.Recording, message, hint, inner);

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Count(int number, string noun) => Text(number) + " " + noun + (number == 1 ? string.Empty : "s");

    // System messages carry paths and differ between systems; the kind is enough.
    private static string Sentence(Exception exception) => exception switch
    {
        FileNotFoundException or DirectoryNotFoundException => "it does not exist",
        UnauthorizedAccessException => "access is denied",
        _ => "the system reports an input or output fault",
    };
}
