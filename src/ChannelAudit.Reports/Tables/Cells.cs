using System.Buffers.Text;
using System.Globalization;

namespace ChannelAudit.Reports.Tables;

/// <summary>How a value is written into a cell of a table: the one place that decides it.</summary>
/// <remarks>
/// Numbers have nine significant digits, a dot, and an exponent (<c>1.5E-07</c>) only below 1E-05 and from 1E+09, which R and pandas
/// both read as numbers. Minus zero is written <c>0</c>. Missing is <c>n/a</c>, as in the BIDS specification, "Tabular files".
/// </remarks>
public static class Cells
{
    /// <summary>What stands in a cell without a value.</summary>
    public const string Missing = "n/a";

    /// <summary>Significant digits of a number.</summary>
    public const int SignificantDigits = 9;

    /// <summary>Upper bound on the bytes of one number.</summary>
    internal const int LongestNumber = 32;

    private const string Format = "G9";

    private const double WholeBelow = 1e9;

    /// <summary>Writes a number as UTF-8.</summary>
    /// <param name="value">Any finite number.</param>
    /// <param name="target">At least <see cref="LongestNumber"/> bytes.</param>
    /// <returns>Bytes written.</returns>
    /// <exception cref="ArgumentOutOfRangeException">When the number is not finite: absence is a missing value with a cause, never NaN.</exception>
    internal static int Write(double value, Span<byte> target)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A table holds finite numbers; a missing one is null with a cause.");
        }

        // Most cells hold whole numbers (limits, zeros): the same text in a fraction of the time, and minus zero becomes zero.
        if (Math.Abs(value) < WholeBelow && value == Math.Truncate(value))
        {
            Utf8Formatter.TryFormat((int)value, target, out int digits);
            return digits;
        }

        value.TryFormat(target, out int written, Format, CultureInfo.InvariantCulture);
        return written;
    }

    /// <summary>A number as text.</summary>
    /// <exception cref="ArgumentOutOfRangeException">When the number is not finite.</exception>
    public static string Number(double value)
    {
        Span<byte> bytes = stackalloc byte[LongestNumber];
        return System.Text.Encoding.ASCII.GetString(bytes[..Write(value, bytes)]);
    }
}
