using ChannelAudit.Setup;

namespace ChannelAudit.Survey;

/// <summary>The amplitude at rest over the amplifier's own noise: about 1 where nothing reaches the amplifier.</summary>
/// <remarks>
/// Inputs that are joined leave the noise of the amplifier, never less; contacts and a resting muscle add to it. Where the setup does not state the
/// noise, 0.46 µV over the band is assumed (engineering judgement: the default limit of 1.3 then lies at 0.6 µV).
/// </remarks>
public static class RestExcess
{
    /// <summary>The noise in µV that is assumed where the setup states none.</summary>
    public const double AssumedNoiseUv = 0.46;

    /// <summary>The ratio; null without rest, and where the file's own rounding is larger than the noise.</summary>
    /// <param name="restPower">Power of rest in the band, µV².</param>
    /// <param name="time">Says whether the file is too coarse.</param>
    /// <param name="setup">May state the amplifier's noise.</param>
    public static double? Of(double? restPower, TimeSurvey time, StudySetup setup) => restPower is { } power && !time.FlatLimits.IsCoarse
        ? Math.Sqrt(power) / (setup.Recording.AmplifierNoiseUv is > 0 and { } stated ? stated : AssumedNoiseUv)
        : null;
}
