using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Writes the header of a made recording: nobody's name, a fixed date.</summary>
internal static class EdfHeaderWriter
{
    // What the published 24-bit format prescribes for its first eight bytes.
    private static readonly byte[] Tag24Bit = [0xFF, 0x42, 0x49, 0x4F, 0x53, 0x45, 0x4D, 0x49];

    /// <summary>The bytes of the header.</summary>
    /// <param name="content">The recording.</param>
    /// <param name="signals">Its signals with their limits.</param>
    /// <param name="annotationSamples">Samples of the annotation signal in a record.</param>
    /// <exception cref="ArgumentException">When a field is too long or not printable ASCII.</exception>
    public static byte[] Write(EdfContent content, ImmutableArray<QuantizedSignal> signals, int annotationSamples)
    {
        StringBuilder text = new();
        int count = signals.Length + 1;
        string format = content.Is24Bit ? "BDF" : "EDF";
        Field(text, "0", 8);
        Field(text, "X X X X", 80);
        Field(text, "Startdate X X X X", 80);
        Field(text, "01.01.00", 8);
        Field(text, "00.00.00", 8);
        Field(text, Number((count + 1) * EdfHeader.BlockBytes), 8);
        Field(text, format + (content.RecordStartsS.IsEmpty ? "+C" : "+D"), 44);
        Field(text, Number(content.Records), 8);
        Field(text, content.RecordDurationS.ToString(CultureInfo.InvariantCulture), 8);
        Field(text, Number(count), 4);

        int highest = content.Is24Bit ? 0x7FFFFF : 0x7FFF;
        All(text, 16, content.Signals.Select(signal => signal.Label), format + " Annotations");
        All(text, 80, content.Signals.Select(signal => signal.Transducer), string.Empty);
        All(text, 8, content.Signals.Select(signal => signal.Unit), string.Empty);
        All(text, 8, signals.Select(signal => signal.PhysicalMin), "-1");
        All(text, 8, signals.Select(signal => signal.PhysicalMax), "1");
        All(text, 8, signals.Select(signal => Number(signal.DigitalMin)), Number(-highest - 1));
        All(text, 8, signals.Select(signal => Number(signal.DigitalMax)), Number(highest));
        All(text, 80, content.Signals.Select(signal => signal.Prefilter), string.Empty);
        All(text, 8, content.Signals.Select(signal => Number(signal.SamplesPerRecord)), Number(annotationSamples));
        All(text, 32, content.Signals.Select(_ => string.Empty), string.Empty);

        byte[] bytes = Encoding.ASCII.GetBytes(text.ToString());
        if (content.Is24Bit)
        {
            Tag24Bit.CopyTo(bytes, 0);
        }

        return bytes;
    }

    private static void All(StringBuilder text, int width, IEnumerable<string> fields, string annotationField)
    {
        foreach (string field in fields.Append(annotationField))
        {
            Field(text, field, width);
        }
    }

    private static void Field(StringBuilder text, string field, int width)
    {
        if (field.Length > width || field.Any(c => c is < ' ' or > '~'))
        {
            throw new ArgumentException("A header field is too long or not printable ASCII: " + field, nameof(field));
        }

        text.Append(field.PadRight(width));
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
