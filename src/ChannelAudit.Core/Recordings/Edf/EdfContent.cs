using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>A recording to be written.</summary>
/// <param name="Signals">The ordinary signals.</param>
/// <param name="Records">Number of records.</param>
public sealed record EdfContent(ImmutableArray<EdfSignalContent> Signals, int Records)
{
    /// <summary>Whether samples have 24 bits instead of 16.</summary>
    public bool Is24Bit { get; init; }

    /// <summary>Length of a record in seconds, at most 8 characters as a decimal number.</summary>
    public decimal RecordDurationS { get; init; } = 1;

    /// <summary>When each record starts, in seconds from the header's start time; makes the file discontinuous. Empty: continuous from 0.</summary>
    public ImmutableArray<decimal> RecordStartsS { get; init; } = [];

    /// <summary>Annotations; onsets in seconds from the first stored sample. Each is stored in the record that covers its onset.</summary>
    public ImmutableArray<Annotation> Annotations { get; init; } = [];

    /// <summary>Start of a record on the file's own clock.</summary>
    internal decimal StartS(int record) => RecordStartsS.IsEmpty ? record * RecordDurationS : RecordStartsS[record];
}
