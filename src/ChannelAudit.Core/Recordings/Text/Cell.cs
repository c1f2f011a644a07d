using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Tells what a cell holds and reads its number; never by the culture of the machine.</summary>
internal static class Cell
{
    private static readonly string[] MissingWords = ["n/a", "na", "nan", "-nan", "null", "none", "-", "#n/a", "1.#qnan", "-1.#ind", "1.#ind"];

    private static readonly string[] InfiniteWords = ["inf", "+inf", "-inf", "infinity", "+infinity", "-infinity", "∞", "-∞", "1.#inf", "-1.#inf"];

    /// <summary>The number format of a text with this decimal sign; no grouping.</summary>
    public static NumberFormatInfo Format(char decimalSign)
    {
        NumberFormatInfo format = (NumberFormatInfo)NumberFormatInfo.InvariantInfo.Clone();
        if (decimalSign == ',')
        {
            format.NumberGroupSeparator = ".";
            format.NumberDecimalSeparator = ",";
        }

        return format;
    }

    /// <summary>What the cell holds.</summary>
    /// <param name="text">The cell without its quotes; blanks around it do not matter.</param>
    /// <param name="format">See <see cref="Format"/>.</param>
    /// <param name="value">The number, else NaN.</param>
    public static CellKind Read(ReadOnlySpan<char> text, NumberFormatInfo format, out double value)
    {
        // Most cells are plain numbers: one parse and done. Words such as NaN parse too, so a letter at the end is looked at again.
        if (double.TryParse(text, NumberStyles.Float, format, out value) && double.IsFinite(value))
        {
            return CellKind.Number;
        }

        value = double.NaN;
        text = text.Trim();
        if (text.IsEmpty || IsOneOf(text, MissingWords))
        {
            return CellKind.Missing;
        }

        // A number that parses and yet is not finite is one beyond the largest double, such as 1e999.
        bool parses = double.TryParse(text, NumberStyles.Float, format, out _);
        return parses || IsOneOf(text, InfiniteWords)
            ? CellKind.Infinite
            : ClockTime.TryParse(text, out _, out _) ? CellKind.Clock : CellKind.Word;
    }

    /// <summary>Digits behind the decimal sign, the exponent taken into account; 0 for whole numbers.</summary>
    public static int Decimals(ReadOnlySpan<char> number, char decimalSign)
    {
        number = number.Trim();
        int exponentAt = number.IndexOfAny('e', 'E');
        int exponent = 0;
        if (exponentAt >= 0)
        {
            _ = int.TryParse(number[(exponentAt + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out exponent);
            number = number[..exponentAt];
        }

        int sign = number.IndexOf(decimalSign);
        int fraction = sign < 0 ? 0 : number.Length - sign - 1;
        return Math.Max(0, fraction - exponent);
    }

    private static bool IsOneOf(ReadOnlySpan<char> text, string[] words)
    {
        foreach (string word in words)
        {
            if (text.Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}
