namespace ChannelAudit.Recordings.Edf;

/// <summary>Records that follow one another without a gap.</summary>
/// <param name="StartS">Start of the first one, in seconds from the first stored sample.</param>
/// <param name="Records">How many.</param>
internal readonly record struct RecordRun(decimal StartS, long Records);
