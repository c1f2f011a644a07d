using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>The mean rectified amplitude of a window, and by how much each fault shifts it: the last measures of the catalog.</summary>
internal static class ScoreMeasures
{
    private const string TrialsOnly = "trials only";
    private const string NothingLeft = "the scoring filter leaves nothing";
    private const string NothingRecorded = "the fault took everything";
    private const string AtLeast = "at least";
    private const string OnlyPops = "pops all over the window";
    private const string NoHighPass = "[scoring] has no high-pass below half the sampling rate";
    private const string FromSpectrum = "from the spectrum, as if Gaussian: " + NoHighPass;

    /// <summary>The measures of a window.</summary>
    /// <param name="reading">The readings.</param>
    /// <param name="channel">The channel's survey.</param>
    /// <param name="isWhole">Whether the window is the whole recording: it has shifts and no amplitude.</param>
    /// <param name="whyNot">Why a question could not be answered; null where it could.</param>
    /// <param name="noUnit">Why nothing can be said in microvolts, or null.</param>
    public static MeasureValue[] Of(WindowReading reading, ChannelSurvey channel, bool isWhole, ScoreGates whyNot, string? noUnit)
    {
        Surviving? left = reading.Left;
        double? line = left is null ? null : ScoreShift.OfAddedPower(left.Line.Power, left.Total);
        double? narrow = left?.Narrow is { } peak ? ScoreShift.OfAddedPower(peak.Power, left.Total) : null;
        double? low = left?.LowPower is { } power ? ScoreShift.OfAddedPower(power, left.Total) : null;
        double? noise = left?.NoisePower is { } white ? ScoreShift.OfAddedPower(white, left.Total) : null;
        MeasureValue rectified = Rectified(reading, channel, isWhole, whyNot.Spectrum, noUnit);
        return
        [
            rectified,
            .. Shifts("line", line, whyNot.Line, rectified),
            .. Shifts("narrow", narrow, whyNot.Narrow, rectified),
            .. Shifts("lowfreq", low, whyNot.Low, rectified),
            .. Shifts("noise", noise, whyNot.Noise, rectified),
            .. Shifts("pops", Pops(reading), whyNot.Pops ?? (isWhole ? TrialsOnly : NoPops(reading, channel)), rectified),
            .. Shifts("clipped", ScoreShift.OfClipping(Percent(reading.Time.ClippedSamples, reading)), whyNot.Clipping, rectified),
            .. Shifts("flat", -Percent(reading.FlatSamples, reading) + 0.0, whyNot.Flat, rectified),
        ];
    }

    /// <summary>The mean rectified amplitude of a trial, in the channel's unit; null where there is none.</summary>
    public static double? RectifiedOf(WindowReading reading, ChannelSurvey channel) => Rectified(reading, channel, false, reading.NoSpectrum, null).Value;

    private static MeasureValue Rectified(WindowReading reading, ChannelSurvey channel, bool isWhole, string? noSpectrum, string? noUnit)
    {
        const string Name = "rectified";
        if ((noUnit ?? noSpectrum ?? (isWhole ? TrialsOnly : null)) is { } cause)
        {
            return MeasureValue.None(Name, cause);
        }

        return (reading.Left, reading.Rectified.Mean) switch
        {
            ({ } left, { } mean) => new MeasureValue(Name, mean * Math.Sqrt(left.NotchShare)),
            ({ Total: > 0 } left, null) when channel.Frame.Filter.Sections(reading.RateHz).IsEmpty =>
                new MeasureValue(Name, Math.Sqrt(2 / Math.PI * left.Total), FromSpectrum),
            _ => MeasureValue.None(Name, NothingLeft),
        };
    }

    // Multiplied first: 42000 times 100/42000 is more than 100 by a bit.
    private static double Percent(long samples, WindowReading reading) =>
        reading.Window.Stored > 0 ? Math.Min(100, 100.0 * samples / reading.Window.Stored) : 0;

    private static double? Pops(WindowReading reading) => reading.Rectified switch
    {
        { Mean: { } mean, BesidePops: > 0 and { } beside } => 100 * ((mean / beside) - 1),
        _ => null,
    };

    // A reason only where there is one: a reason given beside a value hides it.
    private static string? NoPops(WindowReading reading, ChannelSurvey channel) => reading.Rectified switch
    {
        { BesidePops: not null } => null,
        { Mean: not null } => OnlyPops,
        _ => channel.Frame.Filter.Sections(reading.RateHz).IsEmpty ? NoHighPass : null,
    };

    /// <summary>A fault's effect in % and in µV.</summary>
    private static MeasureValue[] Shifts(string fault, double? percent, string? cause, MeasureValue rectified)
    {
        (string effect, string shift) = (fault + "_effect", fault + "_shift");
        return cause is not null || percent is not { } share
            ? [MeasureValue.None(effect, cause ?? NothingLeft), MeasureValue.None(shift, cause ?? NothingLeft)]
            : [new MeasureValue(effect, share), InMicrovolts(shift, share, rectified)];
    }

    private static MeasureValue InMicrovolts(string name, double percent, MeasureValue rectified) => rectified.Value is not { } mean
        ? MeasureValue.None(name, rectified.Note!)
        : percent > -100
            ? new MeasureValue(name, ScoreShift.Added(mean, percent), ScoreShift.IsAtMost(percent) ? AtLeast : null)
            : MeasureValue.None(name, NothingRecorded);
}
