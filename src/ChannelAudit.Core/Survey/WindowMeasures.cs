using System.Collections.Immutable;
using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>A window's readings as named numbers, in the order of <see cref="MeasureCatalog.OfChannels"/>.</summary>
public static class WindowMeasures
{
    private const string NoUnit = "the file has no unit";
    private const string NoRail = "the file states no rail and the signal shows none";
    private const string TooCoarse = "a step of the file is larger than the noise: equal samples are usual";
    private const string NoSamples = "no samples in this window";
    private const string NothingLeft = "the scoring filter leaves nothing";
    private const string NothingOfBand = "the scoring filter leaves nothing of the band";

    /// <summary>The numbers of a window, each with its note where it has none.</summary>
    /// <param name="reading">The readings.</param>
    /// <param name="channel">The channel's survey.</param>
    /// <param name="isWhole">Whether the window is the whole recording.</param>
    /// <param name="contraction">The answer to a task.</param>
    public static ImmutableArray<MeasureValue> Of(WindowReading reading, ChannelSurvey channel, bool isWhole, ContractionAnswer contraction)
    {
        bool hasUnit = channel.Channel.IsMicrovolts;
        double perMs = 1000 / reading.RateHz;
        string? noSpectrum = reading.NoSpectrum;
        string? noLine = noSpectrum ?? LineHidden(channel);
        string? noNarrow = noSpectrum ?? (reading.Narrow is null ? "shorter than 1 s" : null);
        string? noRaw = channel.Channel.NotRaw;
        string? noDrift = noRaw ?? (reading.Drift is null ? "fewer than two full seconds" : null);
        string? noLow = noSpectrum ?? (reading.LowPower is null ? "shorter than 1 s" : null);
        bool any = reading.Window.Stored > 0;
        string? noFlat = !any ? NoSamples : channel.Channel.IsSmoothed ? noRaw : channel.Time.FlatLimits.CanTell ? null : TooCoarse;
        string? noPops = noRaw ?? channel.Pops.NotAssessed ?? (any ? null : NoSamples);
        bool railKnown = channel.Time.Rails.AnyKnown;
        bool canClip = any && railKnown && noRaw is null;
        string noClipping = noRaw ?? (!any ? NoSamples : railKnown ? "the level is at a rail" : NoRail);
        string noUnit = channel.Channel.UnitDoubt ?? NoUnit;
        Surviving? left = reading.Left;
        ScoringFilter filter = channel.Frame.Filter;
        string? noNoise = left?.NoisePower is null ? NoWhiteness(reading, channel) : null;
        string? noBand = filter.IsStated && !channel.Frame.LeavesBand ? NothingOfBand : null;
        (string? noLineLeft, string? noNarrowLeft, string? noLowLeft) = (noLine ?? noBand, noNarrow ?? noBand, noLow ?? noBand);
        ScoreGates gates = new(noSpectrum, noLineLeft, noNarrowLeft, noLowLeft, noNoise, noPops, canClip ? null : noClipping, noFlat);
        string? drifts = channel.DriftHidden ?? DriftScoredAway(filter);
        return
        [
            Uv("line_rms", noLine is null ? reading.Line?.Rms : null, noLine, hasUnit, noUnit),
            Plain("line_ratio", noLine is null ? Ratio(reading.Line, reading.EmgPower) : null, noLine ?? "no line power"),
            Uv("line_left", noLineLeft is null ? left?.Line.Rms : null, noLineLeft, hasUnit, noUnit),
            Plain("line_left_ratio", noLineLeft is null ? Ratio(left?.Line, left?.EmgPower) : null, noLineLeft ?? "no line power left"),
            Uv("narrow_rms", noNarrow is null ? reading.Narrow?.Rms : null, noNarrow, hasUnit, noUnit),
            Plain("narrow_ratio", noNarrow is null ? NarrowRatio(reading.Narrow, reading.EmgPower, channel) : null, noNarrow ?? "no narrow peak"),
            Plain("narrow_hz", noNarrow is null && reading.Narrow is { Power: > 0 } peak ? peak.Hz : null, noNarrow ?? "no narrow peak"),
            Uv("narrow_left", noNarrowLeft is null ? left?.Narrow?.Rms : null, noNarrowLeft, hasUnit, noUnit),
            Plain("narrow_left_ratio", noNarrowLeft is null ? NarrowRatio(left?.Narrow, left?.EmgPower, channel) : null, noNarrowLeft ?? "no narrow peak left"),
            Uv("emg_rms", reading.EmgPower is { } power ? Math.Sqrt(power) : null, noSpectrum, hasUnit, noUnit),
            Plain("clipped", canClip ? Percent(reading.Time.ClippedSamples, reading) : null, noClipping),
            Plain("clipped_run", canClip ? reading.Time.ClippedRun * perMs : null, noClipping),
            Plain("peak_use", noRaw is null ? reading.Time.PeakUsePercent : null, noClipping),
            Plain("flat", noFlat is null ? Percent(reading.FlatSamples, reading) : null, noFlat),
            Plain("flat_run", noFlat is null ? reading.FlatRun * perMs : null, noFlat),
            Plain("missing", reading.Window.Length > 0 ? 100 * (1 - reading.StoredShare) : null, "the window is empty"),
            Plain("gap", reading.Gap * perMs, null),
            Uv("drift_slope", noRaw is null ? reading.Drift?.SlopePerMinute : null, noDrift, hasUnit, noUnit, drifts),
            Uv("drift_range", noRaw is null ? reading.Drift?.Range : null, noDrift, hasUnit, noUnit, drifts),
            Plain("headroom", noRaw is null ? reading.Drift?.HeadroomPercent : null, noDrift ?? (railKnown ? "the only rail is at zero" : NoRail)),
            Plain("level_trend", noRaw is null ? reading.LevelTrend : null, noRaw ?? (isWhole ? "fewer than 10 quiet seconds over a minute" : "whole recording only")),
            Uv("lowfreq_rms", reading.LowPower is { } low ? Math.Sqrt(low) : null, noLow, hasUnit, noUnit, channel.MotionHidden),
            Plain("lowfreq_ratio", LowRatio(reading.LowPower, reading.EmgPower), noLow ?? "no power in the band"),
            Uv("lowfreq_left", noLowLeft is null && left?.LowPower is { } lowLeft ? Math.Sqrt(lowLeft) : null, noLowLeft, hasUnit, noUnit, channel.MotionHidden),
            Plain("lowfreq_left_ratio", noLowLeft is null ? LowRatio(left?.LowPower, left?.EmgPower) : null, noLowLeft ?? NothingLeft),
            Plain("pops", noPops is null ? reading.Pops.Count : null, noPops),
            Plain("pop_rate", noPops is null ? 60 * reading.Pops.Count * reading.RateHz / reading.Window.Stored : null, noPops),
            Plain("pop_share", noPops is null ? reading.Pops.SharePercent : null, noPops ?? "trials only"),
            Uv("rest_rms", reading.RestPower is { } rest ? Math.Sqrt(rest) : null, noSpectrum ?? "no quiet second", hasUnit, noUnit),
            Plain("whiteness", reading.Whiteness, NoWhiteness(reading, channel)),
            Plain("contraction_snr", contraction.Snr, contraction.WhyNone),
            hasUnit ? Plain("rest_excess", reading.RestExcess, !isWhole ? "whole recording only" : noSpectrum ?? (reading.RestPower is null ? "no quiet second" : TooCoarse)) : MeasureValue.None("rest_excess", noUnit),
            Uv("band_p95", reading.LoudPower is { } loud ? Math.Sqrt(loud) : null, !isWhole ? "whole recording only" : noSpectrum ?? "no second without a fault", hasUnit, noUnit),
            .. ScoreMeasures.Of(reading, channel, isWhole, gates, hasUnit ? null : noUnit),
        ];
    }

    /// <summary>Why drift is not judged although it is measured: the stated filter of scoring takes it away; or null.</summary>
    public static string? DriftScoredAway(ScoringFilter filter) => filter is { IsStated: true, TakesDrift: true }
        ? $"not judged: scoring takes it away ({filter.InWords})"
        : null;

    /// <summary>Why line noise cannot be seen on a channel at all, or null.</summary>
    public static string? LineHidden(ChannelSurvey channel) => channel.Frame.Notched.Contains(1)
        ? FormattableString.Invariant($"a notch filter at {channel.Frame.NominalHz:0.###} Hz")
        : channel.Frame.Harmonics.IsEmpty ? "no line harmonic inside the band" : null;

    private static double Percent(long samples, WindowReading reading) => 100.0 * samples / reading.Window.Stored;

    private static double? Ratio(PeakReading? peak, double? emgPower) =>
        peak is { } reading && emgPower is { } power ? reading.RatioDb(power) : null;

    private static double? NarrowRatio(PeakReading? narrow, double? emgPower, ChannelSurvey channel) =>
        narrow is { } peak && emgPower is { } power
            ? peak.RatioDb(NarrowPeak.MuscleBeside(peak, power, channel.Frame))
            : null;

    private static string NoWhiteness(WindowReading reading, ChannelSurvey channel) => reading.NoSpectrum
        ?? (channel.Frame.Band.ToHz < Whiteness.LeastTopHz ? FormattableString.Invariant($"the band ends below {Whiteness.LeastTopHz} Hz")
            : reading.Segments == 0 ? "shorter than 1 s"
            : "no power from 80 to 150 Hz");

    private static double? LowRatio(double? lowPower, double? emgPower) =>
        lowPower is { } low && emgPower is > 0 and { } band ? low / band : null;

    private static MeasureValue Plain(string name, double? value, string? cause) => new(name, value, value is null ? cause : null);

    private static MeasureValue Uv(string name, double? value, string? cause, bool hasUnit, string noUnit, string? note = null) =>
        hasUnit ? new MeasureValue(name, value, value is null ? cause : note) : MeasureValue.None(name, noUnit);
}
