using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Finds the rate that a person set from the rate that printed times give.</summary>
internal static class NiceRate
{
    private const int MostDigits = 6;
    private const int FallbackDigits = 9;

    /// <summary>The rate, or else the step, with the fewest decimal digits (up to 6) that printed times allow; else the rate to 9 digits.</summary>
    /// <param name="rateHz">The rate that the times give.</param>
    /// <param name="relativeTolerance">How far off it may be, as a share.</param>
    /// <remarks>
    /// Times printed to the millisecond over 1 s allow 0.1 %: 249.93 Hz is then 250 Hz. A step counts one digit more than a rate, since people set rates:
    /// 3.9 ms loses to 256 Hz, 3 ms wins over 333.333 Hz.
    /// </remarks>
    public static Rational Find(double rateHz, double relativeTolerance)
    {
        for (int digits = 1; digits <= MostDigits; digits++)
        {
            decimal rate = Rounded(rateHz, digits);
            if (IsNear((double)rate, rateHz, relativeTolerance))
            {
                return Rational.FromDecimal(rate);
            }

            if (digits == 1)
            {
                continue;
            }

            decimal step = Rounded(1 / rateHz, digits - 1);
            if (IsNear(1 / (double)step, rateHz, relativeTolerance))
            {
                Rational fraction = Rational.FromDecimal(step);
                return new Rational(fraction.Denominator, fraction.Numerator);
            }
        }

        return Rational.FromDecimal(Rounded(rateHz, FallbackDigits));
    }

    private static bool IsNear(double candidate, double value, double relativeTolerance) =>
        Math.Abs(candidate - value) <= relativeTolerance * value;

    private static decimal Rounded(double value, int digits)
    {
        string format = "E" + (digits - 1).ToString(CultureInfo.InvariantCulture);
        return decimal.Parse(value.ToString(format, CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
