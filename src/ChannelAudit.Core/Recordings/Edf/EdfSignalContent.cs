namespace ChannelAudit.Recordings.Edf;

/// <summary>One signal of a recording to be written.</summary>
/// <param name="Label">At most 16 printable ASCII characters.</param>
/// <param name="PhysicalMin">The lowest value that must fit, in the unit of the signal; above <paramref name="PhysicalMax"/> for inverted polarity. The
/// limit written is the nearest one of 8 characters that lies outwards.</param>
/// <param name="PhysicalMax">The highest value that must fit.</param>
/// <param name="SamplesPerRecord">Samples in a record: rate x record duration.</param>
/// <param name="Fill">Gives the samples.</param>
public sealed record EdfSignalContent(string Label, double PhysicalMin, double PhysicalMax, int SamplesPerRecord, EdfFill Fill)
{
    /// <summary>The physical dimension, at most 8 printable ASCII characters.</summary>
    public string Unit { get; init; } = "uV";

    /// <summary>The filters applied, as in <c>HP:0.1Hz LP:500Hz N:50Hz</c>.</summary>
    public string Prefilter { get; init; } = string.Empty;

    /// <summary>The transducer, as in <c>AgAgCl electrodes</c>.</summary>
    public string Transducer { get; init; } = string.Empty;

    /// <summary>The lowest code; that of the sample width when null.</summary>
    public int? DigitalMin { get; init; }

    /// <summary>The highest code; that of the sample width when null.</summary>
    public int? DigitalMax { get; init; }

    /// <summary>Samples from an array that holds the whole signal.</summary>
    /// <param name="samples">Every sample, in the unit of the signal.</param>
    public static EdfFill From(ReadOnlyMemory<double> samples) =>
        (first, destination) => samples.Span.Slice((int)first, destination.Length).CopyTo(destination);
}
