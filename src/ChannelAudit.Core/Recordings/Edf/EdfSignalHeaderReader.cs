using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Reads the part of a header that describes the signals: each field for all signals in turn.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly ref struct EdfSignalHeaderReader
{
    private readonly ReadOnlySpan<byte> bytes;
    private readonly int count;
    private readonly EdfWarnings warnings;

    private EdfSignalHeaderReader(ReadOnlySpan<byte> bytes, int count, EdfWarnings warnings)
    {
        this.bytes = bytes;
        this.count = count;
        this.warnings = warnings;
    }

    /// <summary>Reads every signal's fields.</summary>
    /// <param name="bytes">The header behind its first 256 bytes, 256 bytes a signal.</param>
    /// <param name="count">Signals.</param>
    /// <param name="is24Bit">Whether samples have three bytes.</param>
    /// <param name="warnings">Receives what is odd but readable.</param>
    /// <exception cref="ChannelAuditException">When a number of samples is no whole number or negative.</exception>
    public static ImmutableArray<EdfSignalHeader> Read(ReadOnlySpan<byte> bytes, int count, bool is24Bit, EdfWarnings warnings)
    {
        EdfSignalHeaderReader reader = new(bytes, count, warnings);
        ImmutableArray<EdfSignalHeader>.Builder signals = ImmutableArray.CreateBuilder<EdfSignalHeader>(count);
        long offset = 0;
        for (int i = 0; i < count; i++)
        {
            EdfSignalHeader signal = reader.Signal(i, offset);
            if (!signal.IsAnnotations)
            {
                WarnOfDigitalLimits(signal, i, is24Bit ? 24 : 16, warnings);
            }

            signals.Add(signal);
            offset += (long)signal.SamplesPerRecord * (is24Bit ? 3 : 2);
        }

        return signals.MoveToImmutable();
    }

    private static void WarnOfDigitalLimits(EdfSignalHeader signal, int index, int bits, EdfWarnings warnings)
    {
        if (signal.DigitalMin is not int minimum || signal.DigitalMax is not int maximum)
        {
            return;
        }

        if (maximum < minimum)
        {
            warnings.DigitalInverted(index, minimum, maximum);
        }

        int highest = (1 << (bits - 1)) - 1;
        if (Math.Min(minimum, maximum) < -highest - 1 || Math.Max(minimum, maximum) > highest)
        {
            warnings.DigitalTooWide(index, minimum, maximum, bits);
        }
    }

    // Byte offsets for one signal: label 16, transducer 80, dimension 8, limits 4 x 8, prefilter 80, samples 8, reserved 32.
    private EdfSignalHeader Signal(int i, long recordOffset)
    {
        string label = Text(0, 16, i, "label");
        bool isAnnotations = SignalLabel.IsAnnotations(label);
        string samples = Text(216, 8, i, "number of samples");
        int samplesPerRecord = EdfNumber.Whole(samples)
            ?? throw EdfErrors.NotWhole(warnings.File, Place(i), "number of samples in a record", samples);
        return samplesPerRecord < 0
            ? throw EdfErrors.Impossible(warnings.File, Place(i), "number of samples in a record", samples)
            : new EdfSignalHeader(
                label,
                Text(96, 8, i, "unit"),
                isAnnotations ? null : Real(104, i, "physical minimum"),
                isAnnotations ? null : Real(112, i, "physical maximum"),
                isAnnotations ? null : Integer(120, i, "digital minimum"),
                isAnnotations ? null : Integer(128, i, "digital maximum"),
                Text(136, 80, i, "prefilter"),
                samplesPerRecord,
                recordOffset);
    }

    private static string Place(int signal) => string.Create(CultureInfo.InvariantCulture, $"header, channel {signal + 1}");

    private string Text(int offset, int width, int signal, string field)
    {
        string text = EdfText.Decode(bytes.Slice((offset * count) + (signal * width), width), out bool isPlain);
        if (!isPlain)
        {
            warnings.ForeignText(signal, field, text);
        }

        return text;
    }

    private double? Real(int offset, int signal, string field)
    {
        string text = Text(offset, 8, signal, field);
        double? value = EdfNumber.Real(text, out bool hadComma);
        if (value is null)
        {
            warnings.LimitNotANumber(signal, field, text);
        }
        else if (hadComma)
        {
            warnings.DecimalComma(signal, field, text);
        }

        return value;
    }

    private int? Integer(int offset, int signal, string field)
    {
        string text = Text(offset, 8, signal, field);
        int? value = EdfNumber.Whole(text);
        if (value is null)
        {
            warnings.LimitNotANumber(signal, field, text);
        }

        return value;
    }
}
