using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Reads the numbers of a header, with the tolerance that files in the wild need.</summary>
internal static class EdfNumber
{
    /// <summary>A whole number without grouping, or null.</summary>
    public static int? Whole(string text) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value) ? value : null;

    /// <summary>A finite number, or null. One comma and no dot is a decimal comma.</summary>
    /// <param name="text">The field.</param>
    /// <param name="hadComma">Whether a decimal comma was read as a dot.</param>
    public static double? Real(string text, out bool hadComma)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        string dotted = WithDot(text, out hadComma);
        return double.TryParse(dotted, style, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
    }

    /// <summary>A decimal number, exactly as written, or null. One comma and no dot is a decimal comma.</summary>
    /// <param name="text">The field.</param>
    /// <param name="hadComma">Whether a decimal comma was read as a dot.</param>
    public static decimal? Exact(string text, out bool hadComma)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        string dotted = WithDot(text, out hadComma);
        return decimal.TryParse(dotted, style, CultureInfo.InvariantCulture, out decimal value) ? value : null;
    }

    private static string WithDot(string text, out bool hadComma)
    {
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        hadComma = comma >= 0 && comma == text.LastIndexOf(',') && !text.Contains('.', StringComparison.Ordinal);
        return hadComma ? text.Replace(',', '.') : text;
    }
}
