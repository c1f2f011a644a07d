using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Filters;

namespace ChannelAudit.Measures;

/// <summary>The filter that scoring puts before the rectifier, as a share of power that passes at each frequency.</summary>
/// <remarks>
/// Butterworth responses of the digital filters (those of SciPy's <c>butter</c> at the channel's rate). A notch takes the bin nearest its
/// frequency and two on each side to nothing: the window in which line noise is counted. Without a filter in the setup an ordinary one is used to
/// say what it would leave: a high-pass of order 2 at 20 Hz (De Luca et al. 2010, J Biomech 43:1573-1579; order from memory).
/// </remarks>
public sealed partial class ScoringFilter
{
    private const double OrdinaryHighpassHz = 20;
    private const double TakesDriftFromHz = LowFrequency.FromHz;
    private const int TakesDriftFromOrder = 2;

    private ScoringFilter(ScoringSetup setup, bool isStated)
    {
        Setup = setup;
        IsStated = isStated;
        InWords = string.Join(", ", Parts(setup));
    }

    /// <summary>The ordinary filter, which only says what it would leave.</summary>
    public static ScoringFilter Ordinary { get; } = new(new ScoringSetup { HighpassHz = OrdinaryHighpassHz }, false);

    /// <summary>Its corners, notches and order.</summary>
    public ScoringSetup Setup { get; }

    /// <summary>Whether the setup states it: then what it leaves is what is judged.</summary>
    public bool IsStated { get; }

    /// <summary><c>high-pass 20 Hz (order 2), notch 50 Hz</c>.</summary>
    public string InWords { get; }

    /// <summary>Whether nothing of a drift comes through unjudged.</summary>
    /// <remarks>
    /// From 2 Hz on low frequencies are judged on what is left of them; between a lower corner and 2 Hz nothing would be. A first-order high-pass turns a
    /// ramp into a constant, and with it the score.
    /// </remarks>
    public bool TakesDrift => Setup.HighpassHz >= TakesDriftFromHz && Setup.Order >= TakesDriftFromOrder;

    /// <summary>The filter of a setup; the ordinary one where it states none.</summary>
    public static ScoringFilter Of(ScoringSetup setup) => setup.HasFilter ? new ScoringFilter(setup, true) : Ordinary;

    /// <summary>The filter that <see cref="InWords"/> says, as a result keeps it; null when the words say none.</summary>
    /// <param name="words">High-pass, low-pass and notches, parted by commas.</param>
    public static ScoringFilter? FromWords(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        Match match = Words().Match(words);
        if (!match.Success || words.Length == 0)
        {
            return null;
        }

        ScoringSetup setup = new()
        {
            HighpassHz = Number(match.Groups["high"].Value),
            LowpassHz = Number(match.Groups["low"].Value),
            Order = (int)(Number(match.Groups["order"].Value) ?? ScoringSetup.UsualOrder),
            NotchesHz = [.. match.Groups["notches"].Value.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(Number).OfType<double>()],
        };
        return setup.HasFilter ? Of(setup) : null;
    }

    /// <summary>The share of power, 0 to 1, that high-pass and low-pass let through at a frequency.</summary>
    /// <param name="hz">The frequency, 0 to half the rate.</param>
    /// <param name="rateHz">Samples per second.</param>
    public double PowerAt(double hz, double rateHz) =>
        (Setup.HighpassHz is { } high ? Butterworth.HighPassPower(Setup.Order, high, rateHz, hz) : 1)
        * (Setup.LowpassHz is { } low ? Butterworth.LowPassPower(Setup.Order, low, rateHz, hz) : 1);

    /// <summary>Whether a notch lies within two hertz of a frequency.</summary>
    public bool IsNotched(double hz) => Setup.NotchesHz.Any(notch => Math.Abs(notch - hz) <= LineWindow.Reach);

    /// <summary>The share of power that passes at each bin.</summary>
    /// <param name="bins">Bins of a one-sided spectrum.</param>
    /// <param name="binHz">Their width.</param>
    /// <param name="rateHz">Samples per second.</param>
    /// <param name="withNotches">Whether notches count.</param>
    public double[] PowerAtBins(int bins, double binHz, double rateHz, bool withNotches)
    {
        double[] shares = [.. Enumerable.Range(0, bins).Select(bin => PowerAt(bin * binHz, rateHz))];
        foreach (double notch in withNotches ? Setup.NotchesHz : [])
        {
            int center = (int)Math.Round(notch / binHz, MidpointRounding.AwayFromZero);
            for (int bin = Math.Max(0, center - LineWindow.Reach); bin <= Math.Min(bins - 1, center + LineWindow.Reach); bin++)
            {
                shares[bin] = 0;
            }
        }

        return shares;
    }

    /// <summary>The sections that samples pass, notches left out; empty when there is no high-pass to settle, or nothing passes.</summary>
    /// <param name="rateHz">Samples per second.</param>
    public ImmutableArray<SecondOrderSection> Sections(double rateHz) => Setup.HighpassHz is { } high && high < rateHz / 2
        ? [
            .. Butterworth.HighPassSections(Setup.Order, high, rateHz),
            .. Setup.LowpassHz is { } low && low < rateHz / 2 ? Butterworth.LowPassSections(Setup.Order, low, rateHz) : [],
        ]
        : [];

    private static IEnumerable<string> Parts(ScoringSetup setup)
    {
        string order = string.Create(CultureInfo.InvariantCulture, $" (order {setup.Order})");
        if (setup.HighpassHz is { } high)
        {
            yield return "high-pass " + Hertz(high) + (setup.LowpassHz is null ? order : string.Empty);
        }

        if (setup.LowpassHz is { } low)
        {
            yield return "low-pass " + Hertz(low) + order;
        }

        if (!setup.NotchesHz.IsEmpty)
        {
            yield return "notch " + string.Join(", ", setup.NotchesHz.Select(hz => hz.ToString("0.###", CultureInfo.InvariantCulture))) + " Hz";
        }
    }

    [GeneratedRegex(
        @"^(high-pass (?<high>[0-9.]+) Hz)?( \(order (?<order>[0-9]+)\))?(, )?(low-pass (?<low>[0-9.]+) Hz \(order (?<order>[0-9]+)\))?(, )?(notch (?<notches>[0-9., ]+) Hz)?$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000)]
    private static partial Regex Words();

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) ? value : null;

    private static string Hertz(double hz) => hz.ToString("0.###", CultureInfo.InvariantCulture) + " Hz";
}
