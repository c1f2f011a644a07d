using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Opens EDF and EDF+ recordings (continuous and discontinuous) and their 24-bit variant.</summary>
/// <remarks>Kemp et al. 1992, Electroenceph Clin Neurophysiol 82:391; Kemp &amp; Olivan 2003, Clin Neurophysiol 114:1755. Patient, recording, date and
/// time fields are never read.</remarks>
public static class EdfReader
{
    /// <summary>Whether a file that begins so is EDF or its 24-bit variant.</summary>
    /// <param name="firstBytes">The first bytes of the file; 256 are looked at, 8 are needed.</param>
    public static bool Recognises(ReadOnlySpan<byte> firstBytes)
    {
        if (firstBytes.Length < 8)
        {
            return false;
        }

        // A line of text could begin with a 0 and blanks too, but a header has no line ends.
        ReadOnlySpan<byte> tag = firstBytes[1..8];
        bool isEdf = firstBytes[0] == (byte)'0' && !tag.ContainsAnyExcept((byte)' ', (byte)0);
        bool is24Bit = firstBytes[0] == 255 && !tag.ContainsAnyExceptInRange((byte)' ', (byte)'~');
        ReadOnlySpan<byte> header = firstBytes[..Math.Min(firstBytes.Length, EdfHeader.BlockBytes)];
        return is24Bit || (isEdf && !header.ContainsAny((byte)'\n', (byte)'\r', (byte)'\t'));
    }

    /// <summary>Opens a recording: reads its header and annotations, and leaves the samples in the file. The caller disposes it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">The unit of signals that state none.</param>
    /// <returns>The recording. When it has no channel to audit, every channel says why.</returns>
    /// <exception cref="ChannelAuditException">When the file cannot be opened, or its header cannot be trusted.</exception>
    public static Recording Open(string path, ReadOptions options)
    {
        EdfFile file = new(path);
        try
        {
            return Open(file, options);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    private static Recording Open(EdfFile file, ReadOptions options)
    {
        EdfWarnings warnings = new(file.Name);
        EdfHeader header = EdfHeaderReader.Read(file, warnings);
        long records = EdfExtent.CountRecords(file, header, warnings);
        (ImmutableArray<Annotation> annotations, RecordClock clock) = EdfAnnotationScan.Run(file, header, records, warnings);
        (ImmutableArray<Channel> channels, ImmutableArray<SampleScale> scales) = EdfChannels.Make(header, clock.Runs, options);
        return new Recording
        {
            FileName = file.Name,
            Format = header.FormatName,
            Channels = channels,
            Annotations = annotations,
            Warnings = warnings.ToImmutable(),
            DurationS = (double)clock.EndS,
            Samples = new EdfSampleSource(file, header, records, scales),
        };
    }
}
