using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Writes made recordings as EDF+ or its 24-bit variant: the same content gives the same bytes.</summary>
/// <remarks>Kemp &amp; Olivan 2003, Clin Neurophysiol 114:1755. Participant fields are unknown (<c>X</c>), the start is 1 January 2000, 00:00.</remarks>
public static class EdfWriter
{
    // Some readers expect room for a few annotations.
    private const int SmallestAnnotationBytes = 60;

    /// <summary>Writes a file; it appears whole or not at all.</summary>
    /// <param name="path">The file; replaced when it exists.</param>
    /// <param name="content">The recording.</param>
    /// <exception cref="ArgumentException">When the content cannot be written in this format.</exception>
    public static void Write(string path, EdfContent content)
    {
        string temporary = path + ".part";
        try
        {
            using (FileStream stream = new(temporary, FileMode.Create, FileAccess.Write))
            {
                Write(stream, content);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: true);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }

    /// <summary>Writes to a stream.</summary>
    /// <param name="stream">Receives the bytes in order.</param>
    /// <param name="content">The recording.</param>
    /// <exception cref="ArgumentException">When the content cannot be written in this format.</exception>
    public static void Write(Stream stream, EdfContent content)
    {
        Check(content);
        ImmutableArray<QuantizedSignal> signals = [.. content.Signals.Select(signal => new QuantizedSignal(signal, content.Is24Bit))];
        ImmutableArray<byte[]> annotations = AnnotationPacker.Pack(content);
        int sampleBytes = content.Is24Bit ? 3 : 2;
        int mostBytes = Math.Max(SmallestAnnotationBytes, annotations.Max(bytes => bytes.Length));
        int annotationSamples = (mostBytes + sampleBytes - 1) / sampleBytes;
        stream.Write(EdfHeaderWriter.Write(content, signals, annotationSamples));

        byte[] buffer = new byte[Math.Max(annotationSamples, content.Signals.Select(signal => signal.SamplesPerRecord).DefaultIfEmpty(0).Max()) * sampleBytes];
        for (int record = 0; record < content.Records; record++)
        {
            for (int s = 0; s < signals.Length; s++)
            {
                Span<byte> bytes = buffer.AsSpan(0, content.Signals[s].SamplesPerRecord * sampleBytes);
                signals[s].Encode(record, sampleBytes, bytes);
                stream.Write(bytes);
            }

            Span<byte> padded = buffer.AsSpan(0, annotationSamples * sampleBytes);
            padded.Clear();
            annotations[record].CopyTo(padded);
            stream.Write(padded);
        }
    }

    private static void Check(EdfContent content)
    {
        if (content.Records < 1 || content.Signals.Any(signal => signal.SamplesPerRecord < 1))
        {
            throw new ArgumentException("A recording needs a record, and a signal a sample in it.", nameof(content));
        }

        if (content.RecordDurationS <= 0 && !content.Signals.IsEmpty)
        {
            throw new ArgumentException("A record with samples lasts longer than 0 s.", nameof(content));
        }

        if (!content.RecordStartsS.IsEmpty && content.RecordStartsS.Length != content.Records)
        {
            throw new ArgumentException("Each record needs its start.", nameof(content));
        }
    }
}
