using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>What the header says, participant fields and dates left out on purpose.</summary>
/// <param name="Is24Bit">Whether samples have three bytes instead of two.</param>
/// <param name="Continuity">What is said about gaps.</param>
/// <param name="RecordsField">The number of records as it stands in the file; <c>-1</c> while recording.</param>
/// <param name="RecordDurationS">Length of a record in seconds; 0 only without ordinary signals.</param>
/// <param name="Signals">Every signal in file order.</param>
internal sealed record EdfHeader(
    bool Is24Bit,
    EdfContinuity Continuity,
    string RecordsField,
    decimal RecordDurationS,
    ImmutableArray<EdfSignalHeader> Signals)
{
    /// <summary>Bytes of a header block: one for the file, one a signal.</summary>
    public const int BlockBytes = 256;

    /// <summary>Bytes of a sample.</summary>
    public int SampleBytes => Is24Bit ? 3 : 2;

    /// <summary>Bytes before the first record.</summary>
    public long HeaderBytes => (Signals.Length + 1L) * BlockBytes;

    /// <summary>Bytes of a record.</summary>
    public long RecordBytes { get; } = Signals.Sum(signal => (long)signal.SamplesPerRecord) * (Is24Bit ? 3 : 2);

    /// <summary>The most samples that an ordinary signal has in a record; 0 without ordinary signals.</summary>
    public int MostSamples => Signals.Where(signal => !signal.IsAnnotations).Select(signal => signal.SamplesPerRecord).DefaultIfEmpty(0).Max();

    /// <summary>The format as people call it.</summary>
    public string FormatName => (Is24Bit ? "BDF" : "EDF") + Continuity switch
    {
        EdfContinuity.Continuous => "+C",
        EdfContinuity.Discontinuous => "+D",
        _ => string.Empty,
    };
}
