using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>A signal with the limits as they are written, and the scale that follows from them.</summary>
internal sealed class QuantizedSignal
{
    private readonly EdfSignalContent content;
    private readonly SampleScale scale;
    private double[] values = [];

    /// <summary>Fixes the limits of a signal.</summary>
    /// <exception cref="ArgumentException">When limits are equal or do not fit.</exception>
    public QuantizedSignal(EdfSignalContent content, bool is24Bit)
    {
        this.content = content;
        bool isUpright = content.PhysicalMin < content.PhysicalMax;
        PhysicalMin = EdfLimit.Format(content.PhysicalMin, isUp: !isUpright);
        PhysicalMax = EdfLimit.Format(content.PhysicalMax, isUp: isUpright);
        int highest = is24Bit ? 0x7FFFFF : 0x7FFF;
        DigitalMin = content.DigitalMin ?? (-highest - 1);
        DigitalMax = content.DigitalMax ?? highest;
        if (DigitalMin < -highest - 1 || DigitalMax > highest || DigitalMin >= DigitalMax)
        {
            throw new ArgumentException("Digital limits must be in order and fit the sample width.", nameof(content));
        }

        EdfSignalHeader header = new(
            content.Label,
            content.Unit,
            double.Parse(PhysicalMin, CultureInfo.InvariantCulture),
            double.Parse(PhysicalMax, CultureInfo.InvariantCulture),
            DigitalMin,
            DigitalMax,
            content.Prefilter,
            content.SamplesPerRecord,
            RecordOffset: 0);
        scale = SampleScale.Physical(header, 1) ?? throw new ArgumentException("Physical limits must differ.", nameof(content));
    }

    /// <summary>The physical minimum as written.</summary>
    public string PhysicalMin { get; }

    /// <summary>The physical maximum as written.</summary>
    public string PhysicalMax { get; }

    /// <summary>The lowest code.</summary>
    public int DigitalMin { get; }

    /// <summary>The highest code.</summary>
    public int DigitalMax { get; }

    /// <summary>Writes the codes of one record, little-endian.</summary>
    /// <exception cref="InvalidOperationException">When a sample is not a number.</exception>
    public void Encode(long record, int sampleBytes, Span<byte> destination)
    {
        if (values.Length == 0)
        {
            values = new double[content.SamplesPerRecord];
        }

        content.Fill(record * values.Length, values);
        for (int i = 0; i < values.Length; i++)
        {
            int code = Code(values[i]);
            Span<byte> sample = destination.Slice(i * sampleBytes, sampleBytes);
            sample[0] = (byte)code;
            sample[1] = (byte)(code >> 8);
            if (sampleBytes == 3)
            {
                sample[2] = (byte)(code >> 16);
            }
        }
    }

    private int Code(double value)
    {
        double code = Math.Round(((value - scale.Offset) / scale.Gain) + scale.Origin);
        return double.IsNaN(code)
            ? throw new InvalidOperationException("A sample is not a number.")
            : (int)Math.Clamp(code, DigitalMin, DigitalMax);
    }
}
