using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Impedance;

/// <summary>Every message about a table of readings beyond what holds for any small table.</summary>
internal static class ImpedanceErrors
{
    /// <summary>What such a table is.</summary>
    public static readonly SmallTableKind Kind = new(
        "a table of impedance readings",
        "such a table has a header line with site, pair and kohm, and time and phase if you like, and tabs between columns");

    private const string PairHint =
        "write a-b, a-ground or b-ground (a is the first electrode of the site, b the second), or across two sites such as cheek.b-eye.a";

    /// <summary>A column that is needed is not there.</summary>
    public static ChannelAuditException NoColumn(string file, string column, ImmutableArray<string> columns)
    {
        string there = columns.Length == 1 ? $"the only column is {OneLine.List(columns)}" : $"the columns are {OneLine.List(columns)}";
        return Fault($"{OneLine.Of(file)}, header: no column \"{column}\"; {there}", Kind.Shape);
    }

    /// <summary>Values in Ω by their own header.</summary>
    public static ChannelAuditException OhmColumn(string file, string column) => Fault(
        $"{OneLine.Of(file)}, header: a column \"{OneLine.Of(column)}\" but none \"kohm\"",
        "readings are in kΩ: divide values in Ω by 1000 and call the column kohm");

    /// <summary>A header and nothing else.</summary>
    public static ChannelAuditException NoReadings(string file) => Fault(
        $"{OneLine.Of(file)}: no readings below the header", "write a line for each reading, or leave the table out: without one impedance is not available");

    /// <summary>An empty cell where none may be.</summary>
    public static ChannelAuditException Missing(string file, int line, string column) => At(
        file, line, $"no {column}", column switch
        {
            "pair" => PairHint,
            "recording" => "write the recording's ID in every line, or leave that column out",
            _ => $"write the {column} in every line",
        });

    /// <summary>A site that does not exist.</summary>
    public static ChannelAuditException UnknownSite(string file, int line, string site, ImmutableArray<string> known, string? setupFile)
    {
        string where = setupFile is null ? "the other lines of this table" : OneLine.Of(setupFile);
        string near = NearestName.Of(site, known) is { } name ? $"did you mean '{OneLine.Of(name)}'? " : string.Empty;
        return At(file, line, $"site '{OneLine.Of(site)}' is not in {where}", $"{near}sites there: {OneLine.List(known)}");
    }

    /// <summary>The ground in the column of sites.</summary>
    public static ChannelAuditException GroundIsNoSite(string file, int line) => At(
        file, line, "the site is 'ground'", "write the site of the other contact, and a-ground or b-ground as its pair");

    /// <summary>No pair of contacts.</summary>
    public static ChannelAuditException NotAPair(string file, int line, string text) => At(
        file, line, $"'{OneLine.Of(text)}' is no pair of contacts", PairHint);

    /// <summary>A contact against itself.</summary>
    public static ChannelAuditException SameContact(string file, int line, string text) => At(
        file, line, $"pair '{OneLine.Of(text)}' names one contact twice", PairHint);

    /// <summary>A pair of other sites than the row's.</summary>
    public static ChannelAuditException OtherSite(string file, int line, string text, string site) => At(
        file, line, $"pair '{OneLine.Of(text)}' has no electrode of site '{OneLine.Of(site)}'", "write one of the pair's two sites in the column site");

    /// <summary>Something that is no number.</summary>
    public static ChannelAuditException NotANumber(string file, int line, string text) => At(
        file, line, $"'{OneLine.Of(text)}' is not a number in kΩ", WithDot(text) is { } dotted
            ? $"decimals have a dot: {dotted}"
            : "write the number alone, in kΩ with a decimal dot, such as 4.8; n/a where the meter showed none");

    /// <summary>A magnitude below zero.</summary>
    public static ChannelAuditException Negative(string file, int line, string text) => At(
        file, line, $"{OneLine.Of(text)} kΩ is below zero", "a meter shows magnitudes of 0 and more: measure again, or write n/a");

    /// <summary>A number that is no contact in kΩ.</summary>
    public static ChannelAuditException Implausible(string file, int line, double kohm) => At(
        file, line, string.Create(CultureInfo.InvariantCulture, $"{kohm:0.###} kΩ is no contact on skin; is it in Ω?"),
        string.Create(CultureInfo.InvariantCulture, $"write kΩ: {kohm / 1000:0.###} if it is in Ω; n/a if the lead was open. Nothing is rescaled for you"));

    /// <summary>No time of day.</summary>
    public static ChannelAuditException NotATime(string file, int line, string text) => At(
        file, line, $"'{OneLine.Of(text)}' is not a time of day", "write 10:05 or 2026-03-12T10:05, the same way in every line, or n/a");

    /// <summary>Times that cannot be compared.</summary>
    public static ChannelAuditException DateInSome(string file, int line, bool hasDate) => At(
        file, line, hasDate ? "a time with a date, after times without one" : "a time without a date, after times with one",
        "write the date in every line, or in none");

    /// <summary>A site that is no channel, where no setup says which channel it is.</summary>
    public static ChannelAuditException NoChannel(string file, int line, string site, string recordingId, ImmutableArray<string> channels) => At(
        file, line, $"site '{OneLine.Of(site)}' is no channel of {OneLine.Of(recordingId)}",
        $"give --setup, which says what channel a site is, or write the channel's label; channels there: {OneLine.List(channels)}");

    /// <summary>Readings that may belong to any of several recordings.</summary>
    public static ChannelAuditException WhichRecording(string file, IReadOnlyList<string> recordingIds) => Fault(
        $"{OneLine.Of(file)}: does not say which of the {recordingIds.Count.ToString(CultureInfo.InvariantCulture)} recordings its readings belong to",
        $"add a column recording with the recording's ID in every line, such as {OneLine.Of(recordingIds[0])}, or screen one recording alone");

    private static ChannelAuditException At(string file, int line, string what, string hint) =>
        Fault(string.Create(CultureInfo.InvariantCulture, $"{OneLine.Of(file)}, line {line}: {what}"), hint);

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);

    // Only a single comma between digits: 1,234,567 is something else.
    private static string? WithDot(string text)
    {
        string dotted = text.Replace(',', '.');
        return text.Count(sign => sign == ',') == 1 && !text.Contains('.', StringComparison.Ordinal)
            && double.TryParse(dotted, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _)
            ? dotted
            : null;
    }
}
