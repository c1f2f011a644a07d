using System.Buffers;
using System.Buffers.Text;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ChannelAudit.Recordings;

namespace ChannelAudit.Benchmarks.Making;

/// <summary>Writes a recording as delimited text, as recorders export it: a column of seconds, one of microvolts a channel; and its events as a table beside it.</summary>
internal static class TableMaker
{
    private const int BlockRows = 4096;

    /// <summary>Writes both tables.</summary>
    /// <param name="recording">An EDF recording without gaps, of one rate.</param>
    /// <param name="table">Where to; the events go to the same name with <c>_events.tsv</c>.</param>
    public static void Write(string recording, string table)
    {
        using Recording read = RecordingOpener.Open(recording, new ReadOptions());
        ImmutableArray<Channel> channels = [.. read.Channels.Where(channel => channel.NotAudited is null)];
        using FileStream stream = new(table, FileMode.Create, FileAccess.Write, FileShare.None, 1 << 20);
        stream.Write(Encoding.UTF8.GetBytes("time (s)," + string.Join(',', channels.Select(channel => channel.RawLabel + " (uV)")) + "\n"));
        double[][] samples = [.. channels.Select(_ => new double[BlockRows])];
        byte[] line = new byte[32 * (channels.Length + 1)];
        for (long first = 0; first < channels[0].StoredLength; first += BlockRows)
        {
            int rows = (int)Math.Min(BlockRows, channels[0].StoredLength - first);
            for (int i = 0; i < channels.Length; i++)
            {
                read.Samples.Read(channels[i].Index, first, samples[i].AsSpan(0, rows));
            }

            for (int row = 0; row < rows; row++)
            {
                stream.Write(line.AsSpan(0, Line(line, (first + row) / channels[0].Rate.Value, samples, row)));
            }
        }

        File.WriteAllText(Path.ChangeExtension(table, null) + "_events.tsv", Events(read));
    }

    private static int Line(Span<byte> line, double seconds, double[][] samples, int row)
    {
        Utf8Formatter.TryFormat(seconds, line, out int length, new StandardFormat('F', 4));
        foreach (double[] channel in samples)
        {
            line[length++] = (byte)',';
            Utf8Formatter.TryFormat(channel[row], line[length..], out int written, new StandardFormat('F', 1));
            length += written;
        }

        line[length++] = (byte)'\n';
        return length;
    }

    private static string Events(Recording recording)
    {
        StringBuilder text = new("onset\tduration\ttrial_type\n");
        foreach (Annotation marked in recording.Annotations.Where(annotation => annotation.DurationS is not null))
        {
            text.Append(CultureInfo.InvariantCulture, $"{marked.OnsetS}\t{marked.DurationS}\t{marked.Text}\n");
        }

        return text.ToString();
    }
}
