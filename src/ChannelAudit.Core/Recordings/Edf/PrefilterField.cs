using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Reads a prefilter field such as <c>HP:0.1Hz LP:75Hz N:50Hz</c>.</summary>
internal static partial class PrefilterField
{
    /// <summary>Reads the field; what cannot be read as a frequency is not stated.</summary>
    /// <param name="text">The field. <c>HP: DC</c> is a high-pass of 0; <c>mHz</c>, <c>kHz</c> and a decimal comma are known; a number in seconds
    /// (a time constant) is no frequency. Of several high-passes the highest counts, of several low-passes the lowest.</param>
    public static Prefilter Parse(string text)
    {
        // The pattern costs tens of milliseconds the first time; most fields are blank.
        if (text.Length == 0)
        {
            return Prefilter.Unknown;
        }

        double? highpass = null;
        double? lowpass = null;
        ImmutableArray<double>.Builder notches = ImmutableArray.CreateBuilder<double>();
        foreach (Match match in FilterPattern().Matches(text))
        {
            double? hertz = Frequency(match);
            switch (char.ToUpperInvariant(match.Groups["kind"].Value[0]))
            {
                case 'H' when hertz >= 0:
                    highpass = Math.Max(highpass ?? 0, hertz.Value);
                    break;
                case 'L' when hertz > 0:
                    lowpass = Math.Min(lowpass ?? hertz.Value, hertz.Value);
                    break;
                case 'N' when hertz > 0 && !notches.Contains(hertz.Value):
                    notches.Add(hertz.Value);
                    break;
            }
        }

        return new Prefilter(highpass, lowpass, notches.ToImmutable(), text);
    }

    private static double? Frequency(Match match)
    {
        string number = match.Groups["number"].Value;
        if (number.Equals("DC", StringComparison.OrdinalIgnoreCase))
        {
            return 0;
        }

        double scale = match.Groups["prefix"].Value switch
        {
            "k" or "K" => 1000,
            "m" => 0.001,
            _ => 1,
        };
        return EdfNumber.Real(number, out _) * scale;
    }

    [GeneratedRegex(
        @"(?<![A-Z])(?<kind>HPF?|LPF?|NOTCH|N)\s*[:=]\s*(?<number>DC|\d+(?:[.,]\d+)?)(?!\d|[.,]\d)\s*(?:(?<prefix>[km]?)Hz|(?!\s*m?s\b))",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000)]
    private static partial Regex FilterPattern();
}
