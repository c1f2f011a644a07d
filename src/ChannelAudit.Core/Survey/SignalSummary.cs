using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Puts together what a channel is compared by with other recordings.</summary>
internal static class SignalSummary
{
    private const int FewestSeconds = 10;
    private const double LowFromHz = 3;
    private const double LowToHz = 8;
    private const double HighFromHz = 300;
    private const double HighToHz = 450;
    private const double LeastDb = -80;

    /// <summary>The summary of a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="sample">Its sampled spectra.</param>
    /// <param name="survey">Its survey.</param>
    public static ChannelSignal Of(Channel channel, SpectrumSample sample, ChannelSurvey survey) => new()
    {
        // A unit that is doubted is still the unit in which the samples are told: that is what other recordings show to be wrong.
        Unit = channel.IsMicrovolts || channel.UnitDoubt is not null ? "uV" : "none",
        HighpassHz = channel.Prefilter.HighpassHz,
        LowpassHz = channel.Prefilter.LowpassHz,
        NotchesHz = channel.Prefilter.NotchesHz,
        LevelLow = Level(survey.Segments, 0.1),
        LevelMiddle = Level(survey.Segments, 0.5),
        LevelHigh = Level(survey.Segments, 0.95),
        LowDb = Decibel(channel, sample, LowFromHz, LowToHz),
        HighDb = 0.45 * channel.Rate.Value >= HighToHz ? Decibel(channel, sample, HighFromHz, HighToHz) : null,
        SwingsUp = survey.Time.SwingsUp,
        SwingsDown = survey.Time.SwingsDown,
        Print = survey.Time.Print,
    };

    private static double? Level(SegmentTable segments, double probability) => segments.Count < FewestSeconds
        ? null
        : Math.Sqrt(Quantiles.Type7InPlace(segments.BandPower.ToArray(), probability));

    private static double? Decibel(Channel channel, SpectrumSample sample, double fromHz, double toHz)
    {
        double? middle = channel.NotRaw is null ? sample.CalmDensity(Whiteness.MiddleFromHz, Whiteness.MiddleToHz) : null;
        return middle > 0 && sample.CalmDensity(fromHz, toHz) is { } density ? Math.Max(LeastDb, 10 * Math.Log10(density / middle.Value)) : null;
    }
}
