namespace ChannelAudit.Recordings;

/// <summary>What no recording of a muscle exceeds; numbers beyond it are a damaged or misread file, and would take hours and all memory to audit.</summary>
/// <remarks>Engineering judgement, far beyond anything that is recorded: amplifiers sample at 1 to 20 kHz and give some millivolts.</remarks>
internal static class RecordingBounds
{
    /// <summary>The lowest sampling rate, in Hz.</summary>
    public const int LeastRateHz = 1;

    /// <summary>The highest sampling rate, in Hz.</summary>
    public const int MostRateHz = 1_000_000;

    /// <summary>The largest size of a sample, in the unit in which it is audited: microvolts, or raw codes.</summary>
    public const double MostValue = 1e18;

    // A day may have long pauses. What lasts longer must hold so many samples a second on the average.
    private const double FreeSpanS = 86_400;
    private const double LeastMeanRateHz = 100;

    /// <summary>Whether a muscle can be recorded at a rate.</summary>
    public static bool Hold(Rational rate) => rate.Value is >= LeastRateHz and <= MostRateHz;

    /// <summary>Refuses a recording that lasts for days and holds next to nothing: a jump in time that is no pause.</summary>
    /// <exception cref="ChannelAuditException">When it does.</exception>
    public static void CheckSpan(Recording recording)
    {
        long most = recording.Channels.Where(channel => channel.NotAudited is null).Select(channel => channel.StoredLength).DefaultIfEmpty().Max();
        if (recording.DurationS > FreeSpanS && most < LeastMeanRateHz * recording.DurationS)
        {
            throw RecordingErrors.MostlyPause(recording.FileName, recording.DurationS, most);
        }
    }
}
