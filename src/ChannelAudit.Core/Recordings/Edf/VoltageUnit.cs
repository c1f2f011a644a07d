namespace ChannelAudit.Recordings.Edf;

/// <summary>Knows the spellings of voltages.</summary>
internal static class VoltageUnit
{
    /// <summary>Microvolts in one of the unit, or null when the unit is no voltage.</summary>
    /// <param name="unit">As written in any case. Micro may be <c>u</c>, U+00B5, U+03BC, either of these two read as Latin-1 from
    /// UTF-8, or <c>micro</c>. A capital <c>MV</c> is millivolts: no electrode gives megavolts.</param>
    public static double? Microvolts(string unit)
    {
        string plain = unit
            .Replace("\u00C2\u00B5", "u", StringComparison.Ordinal)
            .Replace("\u00CE\u00BC", "u", StringComparison.Ordinal)
            .Replace('\u00B5', 'u')
            .Replace('\u03BC', 'u')
            .Replace(" ", string.Empty, StringComparison.Ordinal)
            .ToLowerInvariant();
        string prefix = plain switch
        {
            _ when plain.EndsWith("volts", StringComparison.Ordinal) => plain[..^5],
            _ when plain.EndsWith("volt", StringComparison.Ordinal) => plain[..^4],
            _ when plain.EndsWith('v') => plain[..^1],
            _ => "?",
        };
        return prefix switch
        {
            "" => 1e6,
            "m" or "milli" => 1e3,
            "u" or "micro" => 1,
            "n" or "nano" => 1e-3,
            _ => null,
        };
    }
}
