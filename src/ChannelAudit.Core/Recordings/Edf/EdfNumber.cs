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
        hadComma = HasComma(text);
        return double.TryParse(hadComma ? text.Replace(',', '.') : text, style, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
    }

    /// <summary>A decimal number, exactly as written, or null. One comma and no dot is a decimal comma.</summary>
    /// <param name="text">The field.</param>
    /// <param name="hadComma">Whether a decimal comma was read as a dot.</param>
    public static decimal? Exact(ReadOnlySpan<char> text, out bool hadComma)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        hadComma = HasComma(text);
        return decimal.TryParse(hadComma ? text.ToString().Replace(',', '.') : text, style, CultureInfo.InvariantCulture, out decimal value) ? value : null;
    }

    private static bool HasComma(ReadOnlySpan<char> text) => text.Count(',') == 1 && !text.Contains('.');
}
