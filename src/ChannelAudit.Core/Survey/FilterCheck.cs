using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>What the file says of its filters against what its spectrum shows; only where it says something.</summary>
/// <remarks>
/// Calm densities are compared, which motion and contractions do not reach, and the noise that electrodes and amplifier make at all frequencies is taken from the top of the
/// band less a tenth of what the muscle has at 80 to 150 Hz. Behind a second-order high-pass fc to fc/2 ... fc/4 keeps 0.03 of that noise (first order 0.11), from fc to 2 fc 0.8 of it;
/// behind a low-pass 2 fc to 3 fc keep 0.03 (0.2). The limits lie between these and what no filter leaves: engineering judgement (docs/information.md).
/// </remarks>
internal static class FilterCheck
{
    private const double LeastHighpassHz = 8;
    private const double LeastLowpassHz = 50;
    private const double LowestHz = 2;
    private const double LeftBelow = 0.5;
    private const double LeftBelowOfBand = 0.03;
    private const double GoneAbove = 0.15;
    private const double LeftAbove = 0.15;
    private const double GoneBelowTop = 0.02;
    private const double LineStands = 16;
    private const double NotchWithinHz = 2;
    private const double MuscleAtTop = 0.1;
    private const double HidesDriftHz = 0.1;
    private const double TrendUv = 20;
    private const int LeastLevels = 60;

    /// <summary>One sentence part a contradiction, with its numbers; empty where the file says nothing or all fits.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="sample">Its spectra.</param>
    /// <param name="mains">The mains.</param>
    /// <param name="baseline">Its levels.</param>
    public static ImmutableArray<string> Of(Channel channel, SpectrumSample sample, MainsResult mains, BaselineLevels baseline)
    {
        Prefilter claimed = channel.Prefilter;
        bool saysNothing = claimed.HighpassHz is null && claimed.LowpassHz is null && claimed.NotchesHz.IsEmpty;
        return saysNothing || channel.NotRaw is not null
            ? []
            :
            [
                .. new[] { HighPass(channel, sample), Drifts(channel, baseline), LowPass(channel, sample) }.OfType<string>(),
                .. NotchesOf(claimed, sample, mains),
            ];
    }

    private static string? HighPass(Channel channel, SpectrumSample sample)
    {
        if (channel.Prefilter.HighpassHz is not { } hz || NoiseDensity(channel, sample) is not { } noise)
        {
            return null;
        }

        double from = Math.Max(hz, LowestHz);
        double? band = Calm(channel, sample, from, 2 * from);
        if (band < GoneAbove * noise && from <= EmgBand.LowestHz)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"a high-pass of {Stated(hz)} is stated, but from {from:0.#} to {2 * from:0.#} Hz only {100 * band / noise:0} % of the noise's density is left: it lies higher");
        }

        double? below = hz >= LeastHighpassHz ? Calm(channel, sample, hz / 4, hz / 2) : null;
        return below >= LeftBelow * noise && below >= LeftBelowOfBand * band
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"a high-pass of {Stated(hz)} is stated, but from {hz / 4:0.#} to {hz / 2:0.#} Hz {100 * below / noise:0} % of the noise's density is left: it lies lower, or there is none")
            : null;
    }

    /// <summary>A baseline that goes somewhere and stays there, which no high-pass lets through.</summary>
    private static string? Drifts(Channel channel, BaselineLevels baseline)
    {
        if (channel.Prefilter.HighpassHz is not >= HidesDriftHz || !channel.IsMicrovolts || baseline.Count < LeastLevels)
        {
            return null;
        }

        double[] levels = [.. baseline.Levels];
        int third = levels.Length / 3;
        double change = Quantiles.Median(levels.AsSpan(levels.Length - third)) - Quantiles.Median(levels.AsSpan(0, third));
        return Math.Abs(change) >= TrendUv
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"a high-pass of {Stated(channel.Prefilter.HighpassHz.Value)} is stated, but the baseline goes by {Math.Abs(change):0} \u00B5V from the first to the last third and stays there")
            : null;
    }

    private static string? LowPass(Channel channel, SpectrumSample sample)
    {
        if (channel.Prefilter.LowpassHz is not { } hz || hz < LeastLowpassHz)
        {
            return null;
        }

        double top = EmgBand.Of(channel).ToHz;
        double? inside = Calm(channel, sample, 0.6 * hz, Math.Min(0.9 * hz, 0.45 * channel.Rate.Value));
        double? above = 2.2 * hz <= 0.45 * channel.Rate.Value ? Calm(channel, sample, 2 * hz, Math.Min(3 * hz, 0.45 * channel.Rate.Value)) : null;
        if (inside > 0 && above >= LeftAbove * inside)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"a low-pass of {hz:0.###} Hz is stated, but above {2 * hz:0.#} Hz {100 * above / inside:0} % of the density just below it is left: it lies higher, or there is none");
        }

        double? middle = Calm(channel, sample, Whiteness.MiddleFromHz, Whiteness.MiddleToHz);
        return top >= Whiteness.LeastTopHz && inside < GoneBelowTop * middle
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"a low-pass of {hz:0.###} Hz is stated, but just below it only {100 * inside / middle:0.0} % of the density from 80 to 150 Hz is left: it lies lower")
            : null;
    }

    private static IEnumerable<string> NotchesOf(Prefilter claimed, SpectrumSample sample, MainsResult mains)
    {
        foreach (double notch in claimed.NotchesHz)
        {
            if (sample.Prominence(notch) is >= LineStands and { } prominence && !sample.HasNotchAt(notch) && sample.CalmDensity(notch, notch + 1) is not null)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"a notch at {notch:0.#} Hz is stated, but a line stands there {prominence:0} times over its neighbours");
            }
        }

        // Behind a notch there is no line to say which of the two it was.
        foreach (double hz in new[] { 50, 60, mains.NominalHz }.Distinct())
        {
            if (sample.HasNotchAt(hz == mains.NominalHz ? mains.Hz : hz) && !claimed.NotchesHz.Any(notch => Math.Abs(notch - hz) <= NotchWithinHz))
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"no notch is stated, but there is a hole at {hz:0.#} Hz");
            }
        }
    }

    /// <summary>The density of what electrodes and amplifier add at all frequencies; null where the band does not reach high enough to tell, or mains or muscle stand above it.</summary>
    private static double? NoiseDensity(Channel channel, SpectrumSample sample)
    {
        double top = EmgBand.Of(channel).ToHz;
        return top >= Whiteness.LeastTopHz
            && Calm(channel, sample, Whiteness.TopShare * top, top) is { } high
            && Calm(channel, sample, Whiteness.MiddleFromHz, Whiteness.MiddleToHz, withMains: true) is { } middle
            && high - (MuscleAtTop * middle) is > 0 and { } noise
            ? noise
            : null;
    }

    /// <summary>Calm density without what rounding adds behind every filter.</summary>
    private static double? Calm(Channel channel, SpectrumSample sample, double fromHz, double toHz, bool withMains = false) =>
        sample.CalmDensity(fromHz, toHz, withMains) is { } density ? Math.Max(0, density - (channel.Step * channel.Step / 6 / channel.Rate.Value)) : null;

    private static string Stated(double hz) => hz > 0 ? hz.ToString("0.###", CultureInfo.InvariantCulture) + " Hz" : "0 Hz (DC)";
}
