using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Every message about something odd in an EDF or 24-bit file that is read all the same.</summary>
/// <param name="file">The file's name without its folder.</param>
internal sealed class EdfWarnings(string file)
{
    private readonly CappedWarnings log = new(file);

    /// <summary>The file's name without its folder.</summary>
    public string File => file;

    /// <summary>Whether the next warning of a kind is kept, not only counted.</summary>
    public bool Keeps(string kind) => log.Keeps(kind);

    /// <summary>What was found.</summary>
    public ImmutableArray<Warning> ToImmutable() => log.ToImmutable();

    /// <summary>The header states another length than its signals need.</summary>
    public void HeaderLength(long stated, long actual) =>
        Header("header length", $"header length is stated as {stated} bytes; {actual} by the number of signals, and so it was read");

    /// <summary>A header field has characters outside printable ASCII.</summary>
    public void ForeignText(int signal, string field, string read) =>
        Signal("characters outside ASCII", signal, $"{field} has characters outside ASCII; read as '{read}'");

    /// <summary>A number has a decimal comma.</summary>
    public void DecimalComma(int signal, string field, string text) =>
        Signal("decimal comma", signal, $"{field} '{text}' has a decimal comma; read as a dot");

    /// <summary>The record duration has a decimal comma.</summary>
    public void DurationComma(string text) => Header("decimal comma", $"record duration '{text}' has a decimal comma; read as a dot");

    /// <summary>A limit is no number.</summary>
    public void LimitNotANumber(int signal, string field, string text) =>
        Signal("limit that is no number", signal, $"{field} '{text}' is not a number; the signal is taken as not calibrated");

    /// <summary>The digital maximum is below the minimum.</summary>
    public void DigitalInverted(int signal, int minimum, int maximum) =>
        Signal("digital limits in reverse", signal, $"digital minimum {minimum} is above the maximum {maximum}; taken as inverted polarity");

    /// <summary>The digital limits do not fit the width of a sample.</summary>
    public void DigitalTooWide(int signal, int minimum, int maximum, int bits) =>
        Signal("digital limits too wide", signal, $"digital limits {minimum} to {maximum} do not fit {bits}-bit samples; taken as stated");

    /// <summary>The number of records is not what the file holds.</summary>
    public void RecordCount(string stated, long actual) =>
        Header("number of records", $"number of records is stated as '{stated}'; the file holds {actual}, and so many were read");

    /// <summary>The last record is not complete.</summary>
    public void LastRecordCut(long record, long bytes, long whole) => Record(
        "incomplete record", record, $"the last record has {bytes} of {whole} bytes; left out");

    /// <summary>There are bytes behind the last record.</summary>
    public void ExtraBytes(long bytes) => log.Add("extra bytes", new FilePlace("end of file"), string.Create(CultureInfo.InvariantCulture, $"{bytes} bytes behind the last record; left out"));

    /// <summary>An EDF+ file without annotation signal.</summary>
    public void PlusWithoutAnnotations(string marked) =>
        Header("no annotation signal", $"marked as '{marked}' but without an annotation signal; read as a plain continuous recording");

    /// <summary>A file with annotations that is not marked as EDF+.</summary>
    public void AnnotationsWithoutPlus() =>
        Header("annotation signal", $"has an annotation signal but is not marked as continuous or discontinuous; read as continuous");

    /// <summary>A record does not say when it starts.</summary>
    public void NoRecordTime(long record) =>
        Record("record without a start time", record, $"does not say when it starts; taken to follow the record before it without a gap");

    /// <summary>A record of a continuous file starts at another time than it should.</summary>
    public void RecordTime(long record, decimal statedS, decimal expectedS) => Record(
        "record at another time than a continuous recording allows",
        record,
        $"says it starts at {statedS} s, {expectedS} s was expected in a continuous recording; samples were kept without a gap");

    /// <summary>A record of a discontinuous file starts a little before the record before it has ended.</summary>
    public void RecordOverlap(long record, decimal statedS, decimal previousEndS) => Record(
        "record that overlaps the one before it",
        record,
        $"says it starts at {statedS} s, before the end of the record before it at {previousEndS} s; placed directly behind it");

    /// <summary>An annotation lies outside the data.</summary>
    public void AnnotationOutside(long record, decimal onsetS, decimal endS) => Record(
        "annotation outside the data",
        record,
        $"annotation at {onsetS} s lies outside the data (0 to {endS} s); kept");

    /// <summary>Something odd in a record.</summary>
    public void Record(string kind, long record, [InterpolatedStringHandlerArgument("", nameof(kind))] WarningText message) =>
        log.Add(kind, new FilePlace("record", record + 1), message.ToStringAndClear());

    private void Header(string kind, [InterpolatedStringHandlerArgument("", nameof(kind))] WarningText message) =>
        log.Add(kind, new FilePlace("header"), message.ToStringAndClear());

    private void Signal(string kind, int signal, [InterpolatedStringHandlerArgument("", nameof(kind))] WarningText message) =>
        log.Add(kind, new FilePlace("header, channel", signal + 1), message.ToStringAndClear());
}
