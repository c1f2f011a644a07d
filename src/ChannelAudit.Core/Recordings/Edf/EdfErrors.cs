using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Every message about an EDF or 24-bit file that cannot be read.</summary>
internal static class EdfErrors
{
    private const string Damaged = "the header is damaged: copy the file again from the recording computer, or export it again";

    /// <summary>The file is shorter than its header.</summary>
    public static ChannelAuditException HeaderCutOff(string file, long length, long needed) => Fault(
        string.Create(CultureInfo.InvariantCulture, $"{file}, header: the file has {length} bytes, its header needs {needed}"),
        "the file is cut off: copy it again from the recording computer");

    /// <summary>A count of the header is not a whole number.</summary>
    public static ChannelAuditException NotWhole(string file, string place, string field, string found) =>
        Fault($"{file}, {place}: {field} '{found}' is not a whole number", Damaged);

    /// <summary>A count of the header is a number that cannot be.</summary>
    public static ChannelAuditException Impossible(string file, string place, string field, string found) =>
        Fault($"{file}, {place}: {field} '{found}' is not possible", Damaged);

    /// <summary>The record duration is not a time.</summary>
    public static ChannelAuditException Duration(string file, string found) =>
        Fault($"{file}, header: record duration '{found}' is not a time in seconds", Damaged);

    /// <summary>Samples without a rate.</summary>
    public static ChannelAuditException NoRate(string file) => Fault(
        $"{file}, header: record duration is 0 although there are signals with samples: their sampling rate is unknown",
        "export the recording again with a record duration above 0");

    /// <summary>No signal has samples.</summary>
    public static ChannelAuditException EmptyRecords(string file) =>
        Fault($"{file}, header: no signal has any sample in a record", Damaged);

    /// <summary>An annotation signal that no memory holds.</summary>
    public static ChannelAuditException AnnotationsTooLarge(string file, long bytes) => Fault(
        string.Create(CultureInfo.InvariantCulture, $"{file}, header: the annotation signal has {bytes} bytes in a record: too many to read"),
        Damaged);

    /// <summary>A header and nothing behind it.</summary>
    public static ChannelAuditException NoData(string file, long recordBytes, long available) => Fault(
        string.Create(CultureInfo.InvariantCulture, $"{file}: no data: a record has {recordBytes} bytes, {available} follow the header"),
        "the recording was not saved, or only its header was copied: look for the complete file");

    /// <summary>The times of the records of a discontinuous file are unknown.</summary>
    public static ChannelAuditException NoRecordTimes(string file) => Fault(
        $"{file}, header: the recording is marked as discontinuous but no annotation says when its records start",
        "export it again with annotations, or as separate continuous recordings");

    /// <summary>A record of a discontinuous file begins before the one before it has ended.</summary>
    /// <param name="file">The file's name.</param>
    /// <param name="record">The record, counted from 0.</param>
    /// <param name="startS">When it says it starts.</param>
    /// <param name="previousEndS">When the record before it ends.</param>
    public static ChannelAuditException TimeRunsBack(string file, long record, decimal startS, decimal previousEndS) => Fault(
        string.Create(
            CultureInfo.InvariantCulture,
            $"{file}, record {record + 1}: time runs backwards: the record starts at {startS} s, before the end of record {record} at {previousEndS} s"),
        "the order of the samples is unknown: export the recording again");

    /// <summary>The file cannot be read although it could be opened.</summary>
    public static ChannelAuditException CutShort(string file, long offset) => Fault(
        string.Create(CultureInfo.InvariantCulture, $"{file}, byte {offset}: the file ended while it was being read"),
        "make sure that nothing changes the file, then run again");

    /// <summary>The system reports a read error.</summary>
    public static ChannelAuditException ReadFailed(string file, long offset, Exception cause) => new(
        FaultKind.Recording,
        string.Create(CultureInfo.InvariantCulture, $"{file}, byte {offset}: the file could not be read on"),
        "check the disk or the network drive, or copy the file to a local disk",
        cause);

    /// <summary>The setup names a unit that we do not know.</summary>
    public static ChannelAuditException UnknownUnit(string unit) => new(
        FaultKind.Usage,
        $"unit '{unit}' is not known",
        "use uV, mV, V, or none for raw codes");

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Recording, message, hint);
}
