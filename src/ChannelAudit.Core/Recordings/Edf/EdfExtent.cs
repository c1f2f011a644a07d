using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Finds how many records a file really holds; the header's number is only compared with it.</summary>
internal static class EdfExtent
{
    /// <summary>The number of complete records in the file.</summary>
    /// <exception cref="ChannelAuditException">When there is none.</exception>
    public static long CountRecords(EdfFile file, EdfHeader header, EdfWarnings warnings)
    {
        long available = file.Length - header.HeaderBytes;
        (long records, long rest) = Math.DivRem(available, header.RecordBytes);
        if (records == 0)
        {
            throw EdfErrors.NoData(file.Name, header.RecordBytes, available);
        }

        bool isNumber = long.TryParse(header.RecordsField, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long stated);
        if (!isNumber || stated != records)
        {
            warnings.RecordCount(header.RecordsField, records);
        }

        if (rest > 0 && isNumber && stated == records)
        {
            warnings.ExtraBytes(rest);
        }
        else if (rest > 0)
        {
            warnings.LastRecordCut(records, rest, header.RecordBytes);
        }

        return records;
    }
}
