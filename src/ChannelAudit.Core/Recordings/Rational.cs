using System.Globalization;
using System.Numerics;

namespace ChannelAudit.Recordings;

/// <summary>A positive fraction: sampling rates are kept as the file states them (samples over record duration), never rounded.</summary>
public readonly record struct Rational
{
    /// <summary>Makes the fraction in lowest terms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">When either part is not positive.</exception>
    public Rational(long numerator, long denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(numerator);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(denominator);
        long divisor = (long)BigInteger.GreatestCommonDivisor(numerator, denominator);
        Numerator = numerator / divisor;
        Denominator = denominator / divisor;
    }

    /// <summary>The upper part.</summary>
    public long Numerator { get; }

    /// <summary>The lower part.</summary>
    public long Denominator { get; }

    /// <summary>The nearest double.</summary>
    public double Value => (double)Numerator / Denominator;

    /// <summary>The fraction that a decimal number is, exactly.</summary>
    /// <exception cref="OverflowException">When the parts do not fit 64 bits.</exception>
    public static Rational FromDecimal(decimal value)
    {
        long denominator = 1;
        while (decimal.Truncate(value) != value)
        {
            value *= 10;
            denominator = checked(denominator * 10);
        }

        return new Rational((long)value, denominator);
    }

    /// <summary>The sample index nearest to a time: seconds times this rate, halves away from zero.</summary>
    /// <exception cref="OverflowException">When the index does not fit 64 bits.</exception>
    public long IndexAt(decimal seconds)
    {
        // Exact: the decimal as a whole number over a power of ten, times the fraction.
        int[] bits = decimal.GetBits(seconds);
        int scale = (bits[3] >> 16) & 0x7F;
        BigInteger mantissa = new(decimal.Parse(
            decimal.Abs(seconds).ToString(CultureInfo.InvariantCulture).Replace(".", string.Empty, StringComparison.Ordinal),
            NumberStyles.None,
            CultureInfo.InvariantCulture));
        BigInteger divisor = BigInteger.Pow(10, scale) * Denominator;
        BigInteger index = ((2 * mantissa * Numerator) + divisor) / (2 * divisor);
        return checked((long)(seconds < 0 ? -index : index));
    }

    /// <summary>The time of a sample in seconds.</summary>
    public double SecondsAt(long index) => (double)index * Denominator / Numerator;

    /// <inheritdoc/>
    public override string ToString() => Value.ToString("G9", CultureInfo.InvariantCulture);
}
