using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Reads the fixed part of a header; the part for the signals is left to <see cref="EdfSignalHeaderReader"/>.</summary>
/// <remarks>Kemp et al. 1992, Electroenceph Clin Neurophysiol 82:391; Kemp &amp; Olivan 2003, Clin Neurophysiol 114:1755. Bytes 8 to 184 (patient,
/// recording, date and time) are never looked at: nothing of them may reach an output, and nothing here depends on them.</remarks>
internal static class EdfHeaderReader
{
    private const string Place = "header";

    // The longest record that is believed: 8 characters can claim three years.
    private const decimal LongestRecordS = 100_000m;

    /// <summary>Reads the header of a file.</summary>
    /// <param name="file">The open file.</param>
    /// <param name="warnings">Receives what is odd but readable.</param>
    /// <exception cref="ChannelAuditException">When counts are no whole numbers or not possible, or the file is shorter than its header.</exception>
    public static EdfHeader Read(EdfFile file, EdfWarnings warnings)
    {
        byte[] fixedPart = ReadBlocks(file, 1);
        long statedLength = Whole(file.Name, "header length", fixedPart.AsSpan(184, 8));
        int signals = Whole(file.Name, "number of signals", fixedPart.AsSpan(252, 4));
        if (signals < 1)
        {
            throw EdfErrors.Impossible(file.Name, Place, "number of signals", Invariant(signals));
        }

        byte[] blocks = ReadBlocks(file, signals + 1);
        long length = blocks.Length;
        if (statedLength != length)
        {
            warnings.HeaderLength(statedLength, length);
        }

        bool is24Bit = fixedPart[0] == 255;
        ImmutableArray<EdfSignalHeader> signalHeaders =
            EdfSignalHeaderReader.Read(blocks.AsSpan(EdfHeader.BlockBytes), signals, is24Bit, warnings);
        EdfHeader header = new(
            is24Bit,
            Continuity(EdfText.Decode(fixedPart.AsSpan(192, 44), out _), signalHeaders, warnings),
            EdfText.Decode(fixedPart.AsSpan(236, 8), out _),
            Duration(file.Name, EdfText.Decode(fixedPart.AsSpan(244, 8), out _), warnings),
            signalHeaders);
        if (header.RecordBytes == 0)
        {
            throw EdfErrors.EmptyRecords(file.Name);
        }

        return header.RecordDurationS == 0 && header.MostSamples > 0 ? throw EdfErrors.NoRate(file.Name) : header;
    }

    private static byte[] ReadBlocks(EdfFile file, int count)
    {
        // Checked against the file before anything is allocated.
        int needed = count * EdfHeader.BlockBytes;
        if (file.Length < needed)
        {
            throw EdfErrors.HeaderCutOff(file.Name, file.Length, needed);
        }

        byte[] blocks = new byte[needed];
        file.Read(0, blocks);
        return blocks;
    }

    private static int Whole(string file, string field, ReadOnlySpan<byte> bytes)
    {
        string text = EdfText.Decode(bytes, out _);
        return EdfNumber.Whole(text) ?? throw EdfErrors.NotWhole(file, Place, field, text);
    }

    private static EdfContinuity Continuity(string reserved, ImmutableArray<EdfSignalHeader> signals, EdfWarnings warnings)
    {
        bool hasAnnotations = signals.Any(signal => signal is { IsAnnotations: true, SamplesPerRecord: > 0 });
        bool isPlus = reserved.StartsWith("EDF+", StringComparison.OrdinalIgnoreCase)
            || reserved.StartsWith("BDF+", StringComparison.OrdinalIgnoreCase);
        if (isPlus && reserved.Length > 4 && char.ToUpperInvariant(reserved[4]) == 'D')
        {
            return hasAnnotations ? EdfContinuity.Discontinuous : throw EdfErrors.NoRecordTimes(warnings.File);
        }

        if (isPlus && !hasAnnotations)
        {
            warnings.PlusWithoutAnnotations(reserved);
        }

        bool isMarkedContinuous = isPlus && reserved.Length > 4 && char.ToUpperInvariant(reserved[4]) == 'C';
        if (hasAnnotations && !isMarkedContinuous)
        {
            warnings.AnnotationsWithoutPlus();
        }

        return hasAnnotations ? EdfContinuity.Continuous : EdfContinuity.Plain;
    }

    private static decimal Duration(string file, string text, EdfWarnings warnings)
    {
        decimal? duration = EdfNumber.Exact(text, out bool hadComma);
        if (duration is not (>= 0 and <= LongestRecordS))
        {
            throw EdfErrors.Duration(file, text);
        }

        if (hadComma)
        {
            warnings.DurationComma(text);
        }

        return duration.Value;
    }

    private static string Invariant(int value) => value.ToString(CultureInfo.InvariantCulture);
}
