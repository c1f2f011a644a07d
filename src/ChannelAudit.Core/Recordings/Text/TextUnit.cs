namespace ChannelAudit.Recordings.Text;

/// <summary>What a unit says about a column's numbers.</summary>
/// <param name="Text">The unit as it stands in the file.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Factor">Microvolts for a voltage, seconds for a time; else 1.</param>
internal sealed record TextUnit(string Text, TextUnitKind Kind, double Factor)
{
    private static readonly (string[] Names, TextUnitKind Kind, double Factor)[] Known =
    [
        (["uv", "µv", "μv", "âµv", "microv", "microvolt", "microvolts"], TextUnitKind.Voltage, 1),
        (["mv", "millivolt", "millivolts"], TextUnitKind.Voltage, 1e3),
        (["v", "volt", "volts"], TextUnitKind.Voltage, 1e6),
        (["nv", "nanovolt", "nanovolts"], TextUnitKind.Voltage, 1e-3),
        (["s", "sec", "secs", "second", "seconds"], TextUnitKind.Time, 1),
        (["ms", "msec", "msecs", "millisecond", "milliseconds", "millis"], TextUnitKind.Time, 1e-3),
        (["us", "µs", "μs", "usec", "microsecond", "microseconds", "micros"], TextUnitKind.Time, 1e-6),
        (["ns", "nsec", "nanosecond", "nanoseconds"], TextUnitKind.Time, 1e-9),
        (["min", "minute", "minutes"], TextUnitKind.Time, 60),
        (["h:m:s", "hh:mm:ss", "hh:mm:ss.fff", "hh:mm:ss.mmm", "hms"], TextUnitKind.Clock, 1),
        (["none", "a.u.", "au", "a.u", "arb", "count", "counts", "code", "codes", "raw", "adc", "adu", "lsb", "bit", "bits"], TextUnitKind.Raw, 1),
        (["°c", "degc", "c", "k", "n", "nm", "g", "m/s2", "m/s^2", "m/s²", "deg", "°", "deg/s", "°/s", "%", "pa", "kpa", "mmhg", "bpm", "hz",
            "khz", "ohm", "kohm", "mohm", "kω", "ω", "us/cm", "a", "ma", "ua", "µa", "μa", "lux", "cm", "mm", "m"], TextUnitKind.Other, 1),
    ];

    /// <summary>Reads a unit, brackets around it allowed.</summary>
    /// <returns>Null when the text is no unit that is known.</returns>
    public static TextUnit? Parse(string text)
    {
        string trimmed = text.Trim();
        string bare = trimmed.Trim('(', ')', '[', ']', '{', '}', ' ');
        foreach ((string[] names, TextUnitKind kind, double factor) in Known)
        {
            foreach (string name in names)
            {
                if (bare.Equals(name, StringComparison.OrdinalIgnoreCase) && !IsMegavolt(bare))
                {
                    return new TextUnit(bare, kind, factor);
                }
            }
        }

        return null;
    }

    /// <summary>Splits a label such as <c>EMG cheek (µV)</c>, <c>EMG [mV]</c>, <c>EMG / uV</c> or <c>time_ms</c> into name and unit.</summary>
    /// <returns>The whole label and null when it ends in no known unit.</returns>
    public static (string Name, TextUnit? Unit) SplitLabel(string label)
    {
        string trimmed = label.Trim();
        char close = trimmed.Length > 0 ? trimmed[^1] : ' ';
        char open = close switch { ')' => '(', ']' => '[', '}' => '{', _ => '\0' };
        int start = open == '\0' ? trimmed.LastIndexOfAny(['/', '_', ',']) : trimmed.LastIndexOf(open);
        if (start <= 0 || Parse(trimmed[(start + 1)..]) is not { } unit)
        {
            return (trimmed, null);
        }

        // "EMG (C)" is a site's letter rather than a temperature.
        if (unit is { Kind: TextUnitKind.Other, Text.Length: 1 } && trimmed.Contains("emg", StringComparison.OrdinalIgnoreCase))
        {
            return (trimmed, null);
        }

        // Without brackets only a voltage or a time is sure to be a unit: "EMG_g" may be a name.
        bool isSure = open != '\0' || (unit.Kind is TextUnitKind.Voltage or TextUnitKind.Time && unit.Text.Length > 1) || trimmed[start] == '/';
        return isSure ? (trimmed[..start].Trim(), unit) : (trimmed, unit is { Kind: TextUnitKind.Time } ? unit : null);
    }

    // "MV" is a million volts to the letter; nobody records that from a face, and nobody should have it read as mV unasked.
    private static bool IsMegavolt(string text) => text.StartsWith("MV", StringComparison.Ordinal) && text.Length == 2;
}
