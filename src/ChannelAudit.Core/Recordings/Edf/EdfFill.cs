namespace ChannelAudit.Recordings.Edf;

/// <summary>Gives the samples of a signal block by block, in order, so that a long recording is never in memory as a whole.</summary>
/// <param name="firstSample">Stored index of the first sample wanted.</param>
/// <param name="destination">To be filled, in the unit of the signal. Values beyond the limits are written at the rail, as an amplifier does.</param>
public delegate void EdfFill(long firstSample, Span<double> destination);
