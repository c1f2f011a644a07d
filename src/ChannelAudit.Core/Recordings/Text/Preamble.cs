using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>What the lines above a table say about all of it.</summary>
/// <param name="RateHz">A sampling rate, or null.</param>
/// <param name="Unit">A unit for all columns, or null.</param>
internal sealed record Preamble(decimal? RateHz, TextUnit? Unit)
{
    private static readonly string[] RateKeys =
        ["sampling rate", "sample rate", "samplerate", "samplingrate", "sampling frequency", "sample frequency", "samplingfrequency", "sampling hz", "fs", "rate", "frequency", "srate"];

    private static readonly string[] IntervalKeys = ["interval", "sampling interval", "sample interval", "sampling period", "sample period", "dt", "time step"];

    private static readonly string[] UnitKeys = ["unit", "units", "amplitude unit", "signal unit", "physical unit"];

    /// <summary>Reads lines such as <c>Sampling rate: 2000 Hz</c>, <c>fs=2 kHz</c>, <c>Interval;0,5 ms</c>, <c>Unit,mV</c>.</summary>
    public static Preamble Read(ImmutableArray<string> lines, TextDialect dialect)
    {
        decimal? rate = null;
        TextUnit? unit = null;
        foreach (string line in lines)
        {
            (string key, string value) = Split(line, dialect.Separator);
            if (RateKeys.Contains(Bare(key), StringComparer.Ordinal))
            {
                rate ??= Rate(key, value);
            }
            else if (IntervalKeys.Contains(Bare(key), StringComparer.Ordinal))
            {
                rate ??= Interval(key, value);
            }
            else if (UnitKeys.Contains(Bare(key), StringComparer.Ordinal))
            {
                unit ??= TextUnit.Parse(value);
            }
        }

        return new Preamble(rate, unit is { Kind: TextUnitKind.Voltage or TextUnitKind.Raw } ? unit : null);
    }

    private static (string Key, string Value) Split(string line, char separator)
    {
        string text = line.Trim().TrimStart('#', '%', '/', ' ', '\t').Trim(separator, '"', ' ');
        int at = text.AsSpan().IndexOfAny(':', '=', separator == ' ' ? '=' : separator);
        return at < 0 ? (string.Empty, string.Empty) : (text[..at].Trim().Trim('"'), text[(at + 1)..].Trim(separator, ' ', '"', '=', '\t', ':').Trim());
    }

    // "Sampling rate (Hz)" and "sampling_rate" are one key.
    private static string Bare(string key)
    {
        int bracket = key.AsSpan().IndexOfAny('(', '[');
        string name = (bracket > 0 ? key[..bracket] : key).Replace('_', ' ').Replace('-', ' ').Trim().ToLowerInvariant();
        return name is "sampling rate hz" or "sample rate hz" ? "sampling rate" : name;
    }

    private static decimal? Rate(string key, string value)
    {
        (decimal? number, string unit) = NumberAndUnit(value);
        unit = unit.Length > 0 ? unit : UnitInKey(key);
        return unit.ToLowerInvariant() switch
        {
            _ when number is null or <= 0 or > 1_000_000 => null,
            "" or "hz" or "sps" or "samples/s" or "samples/sec" or "samples/second" or "s/s" or "1/s" or "samples per second" => number,
            "khz" or "ksps" or "ks/s" => number * 1000,
            _ => null,
        };
    }

    private static decimal? Interval(string key, string value)
    {
        (decimal? number, string unit) = NumberAndUnit(value);
        unit = unit.Length > 0 ? unit.Split('/')[0] : UnitInKey(key);
        bool isTime = TextUnit.Parse(unit) is { Kind: TextUnitKind.Time };
        decimal factor = isTime ? (decimal)TextUnit.Parse(unit)!.Factor : 0;

        // An interval is read only when its reciprocal is a rate to the last digit; anything else is left to the setup.
        return number is > 0 && factor > 0 && decimal.Round(1 / (number.Value * factor), 6) is var rate && rate * number.Value * factor == 1 ? rate : null;
    }

    private static string UnitInKey(string key)
    {
        int bracket = key.AsSpan().IndexOfAny('(', '[');
        return bracket < 0 ? string.Empty : key[bracket..].Trim('(', ')', '[', ']', ' ');
    }

    private static (decimal? Number, string Unit) NumberAndUnit(string value)
    {
        int end = 0;
        while (end < value.Length && (char.IsAsciiDigit(value[end]) || value[end] is '.' or ','))
        {
            end++;
        }

        string number = value[..end];

        // "2,000" may be two or two thousand: with three digits behind one comma nothing is read.
        bool isAmbiguous = number.IndexOf(',', StringComparison.Ordinal) is >= 0 and int comma && number.Length - comma == 4;
        return !isAmbiguous && decimal.TryParse(number.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal parsed)
            ? (parsed, value[end..].Trim(' ', ',', ';', '\t', '"'))
            : (null, string.Empty);
    }
}
