using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Reads the integers of a file as they are stored.</summary>
internal static class EdfCodes
{
    public static long[] Read(string path, int channel)
    {
        using EdfFile file = new(path);
        EdfWarnings warnings = new(file.Name);
        EdfHeader header = EdfHeaderReader.Read(file, warnings);
        long records = EdfExtent.CountRecords(file, header, warnings);
        using EdfSampleSource source = new(file, header, records, [.. header.Signals.Select(_ => SampleScale.Codes)]);
        double[] codes = new double[records * header.Signals[channel].SamplesPerRecord];
        source.Read(channel, 0, codes);
        return [.. codes.Select(code => (long)code)];
    }

    public static double[] Values(Recording recording, int channel)
    {
        double[] values = new double[recording.Channels[channel].StoredLength];
        recording.Samples.Read(channel, 0, values);
        return values;
    }
}
