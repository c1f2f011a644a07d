namespace ChannelAudit.Recordings;

/// <summary>An unbroken run of stored samples on a channel's time axis.</summary>
/// <param name="Start">Timeline index of its first sample: round(time x rate), time zero being the first stored sample of the recording.</param>
/// <param name="Length">Samples.</param>
/// <param name="StoredStart">Index of its first sample among the stored ones.</param>
public readonly record struct Stretch(long Start, long Length, long StoredStart)
{
    /// <summary>Timeline index behind its last sample.</summary>
    public long End => Start + Length;
}
