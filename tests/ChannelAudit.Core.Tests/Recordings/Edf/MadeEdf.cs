using System.Text;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>A small file made by our writer, whose bytes a test may change before it is read.</summary>
internal sealed class MadeEdf : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("channelaudit-edf-");

    /// <summary>Two signals of 4 Hz, three records of 1 s: with the annotation signal the header has 1024 bytes, a record 76.</summary>
    public MadeEdf(EdfContent? content = null)
    {
        Path = System.IO.Path.Combine(folder.FullName, "made.edf");
        EdfWriter.Write(Path, content ?? Small());
        Bytes = File.ReadAllBytes(Path);
    }

    public string Path { get; }

    public byte[] Bytes { get; set; }

    public int Signals => int.Parse(Encoding.ASCII.GetString(Bytes, 252, 4), System.Globalization.CultureInfo.InvariantCulture);

    public static EdfContent Small() => new([Signal("EMG cheek"), Signal("EMG brow")], 3);

    public static EdfSignalContent Signal(string label) =>
        new(label, -500, 500, 4, (first, samples) =>
        {
            for (int i = 0; i < samples.Length; i++)
            {
                samples[i] = 10 * (first + i);
            }
        });

    /// <summary>Replaces a header field: file fields by name, signal fields as <c>NAME INDEX</c>.</summary>
    public MadeEdf Set(string field, string value)
    {
        string[] parts = field.Split(' ');
        (int offset, int width) = parts[0] switch
        {
            "length" => (184, 8),
            "reserved" => (192, 44),
            "records" => (236, 8),
            "duration" => (244, 8),
            "signals" => (252, 4),
            "label" => (0, 16),
            "unit" => (96, 8),
            "pmin" => (104, 8),
            "pmax" => (112, 8),
            "dmin" => (120, 8),
            "dmax" => (128, 8),
            "prefilter" => (136, 80),
            _ => (216, 8),
        };
        int start = parts.Length == 1
            ? offset
            : 256 + (offset * Signals) + (int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture) * width);
        Encoding.Latin1.GetBytes(value.PadRight(width)).CopyTo(Bytes, start);
        return this;
    }

    /// <summary>Replaces the annotation bytes of a record; <c>|</c> stands for 20, <c>^</c> for 21, <c>_</c> for 0.</summary>
    public MadeEdf SetAnnotations(int record, string text)
    {
        int recordBytes = (Bytes.Length - (256 * (Signals + 1))) / 3;
        int start = (256 * (Signals + 1)) + (record * recordBytes) + 16;
        Span<byte> bytes = Bytes.AsSpan(start, recordBytes - 16);
        bytes.Clear();
        Encoding.Latin1.GetBytes(text.Replace('|', '\u0014').Replace('^', '\u0015').Replace('_', '\0')).CopyTo(bytes);
        return this;
    }

    public Recording Open(ReadOptions? options = null)
    {
        File.WriteAllBytes(Path, Bytes);
        return EdfReader.Open(Path, options ?? new ReadOptions());
    }

    public ChannelAuditException Refusal() => Assert.Throws<ChannelAuditException>(() => Open().Dispose());

    public string[] Warnings()
    {
        using Recording recording = Open();
        return [.. recording.Warnings.Select(warning => $"{warning.File}, {warning.Place}: {warning.Message}")];
    }

    public void Dispose() => folder.Delete(recursive: true);
}
