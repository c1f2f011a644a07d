namespace ChannelAudit.Signals.Arithmetic;

/// <summary>
/// Sine, cosine and logarithm from additions, multiplications and divisions alone, so that the bits are the same on
/// every processor and system.
/// </summary>
/// <remarks>
/// The functions of <see cref="Math"/> call the system's library, whose last bit may differ between machines. Taylor
/// series on a reduced argument; the error is below two units in the last place.
/// </remarks>
public static class RepeatableMath
{
    private const double LogOfTwo = 0.693147180559945309;

    /// <summary>Gives sine and cosine of an angle counted in full turns.</summary>
    /// <param name="turns">Angle in turns (1 = 2π), finite, of either sign.</param>
    /// <returns>Sine and cosine, not a number when <paramref name="turns"/> is not finite.</returns>
    public static (double Sin, double Cos) SinCosTurns(double turns)
    {
        var fraction = turns - Math.Floor(turns);
        if (!(fraction < 1))
        {
            return double.IsFinite(turns) ? (0, 1) : (double.NaN, double.NaN);
        }

        var octant = (int)(8 * fraction);
        return FromOctant(octant, fraction - (octant / 8.0), (octant + 1) / 8.0 - fraction);
    }

    /// <summary>Gives sine and cosine of <c>2π·numerator/denominator</c>, reduced without rounding.</summary>
    /// <param name="numerator">Any whole number.</param>
    /// <param name="denominator">Number of equal parts of the circle, above 0 and below 2^59.</param>
    /// <returns>Sine and cosine.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The denominator is not positive.</exception>
    public static (double Sin, double Cos) SinCosOfPart(long numerator, long denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(denominator);
        var part = numerator % denominator;
        var eightfold = 8 * (part < 0 ? part + denominator : part);
        var octant = (int)(eightfold / denominator);
        var rest = eightfold - (octant * denominator);
        var eighths = 8.0 * denominator;
        return FromOctant(octant, rest / eighths, (denominator - rest) / eighths);
    }

    /// <summary>Gives the natural logarithm.</summary>
    /// <param name="value">Positive finite number of at least 2.3E-308 (no subnormal numbers).</param>
    /// <returns>The logarithm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not positive, not finite or subnormal.</exception>
    /// <remarks>ln(m·2^e) = e·ln 2 + 2·artanh((m−1)/(m+1)) with m between √½ and √2.</remarks>
    public static double Log(double value)
    {
        if (!double.IsNormal(value) || value < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "The logarithm needs a positive normal number.");
        }

        var exponent = Math.ILogB(value);
        var mantissa = Math.ScaleB(value, -exponent);
        if (mantissa > 1.4142135623730951)
        {
            mantissa /= 2;
            exponent++;
        }

        var f = (mantissa - 1) / (mantissa + 1);
        var square = f * f;
        var series = 0.0;
        for (var power = 23; power >= 3; power -= 2)
        {
            series = (series + (1.0 / power)) * square;
        }

        return (exponent * LogOfTwo) + (2 * (f + (f * series)));
    }

    /// <summary>Unfolds an angle in an eighth of a turn to the whole circle.</summary>
    /// <param name="octant">Eighth of the circle, 0 to 7.</param>
    /// <param name="after">Turns after the start of the octant.</param>
    /// <param name="before">Turns before its end.</param>
    private static (double Sin, double Cos) FromOctant(int octant, double after, double before)
    {
        var (sin, cos) = Kernel((octant & 1) == 0 ? after : before);
        return octant switch
        {
            0 => (sin, cos),
            1 => (cos, sin),
            2 => (cos, -sin),
            3 => (sin, -cos),
            4 => (-sin, -cos),
            5 => (-cos, -sin),
            6 => (-cos, sin),
            _ => (-sin, cos),
        };
    }

    /// <summary>Taylor series between 0 and an eighth of a turn.</summary>
    private static (double Sin, double Cos) Kernel(double turns)
    {
        var angle = 2 * Math.PI * turns;
        var square = angle * angle;
        var sin = 0.0;
        var cos = 0.0;
        for (var order = 18; order >= 2; order -= 2)
        {
            cos = (1 - cos) * square / (order * (order - 1));
            sin = (1 - sin) * square / (order * (order + 1));
        }

        return (angle - (angle * sin), 1 - cos);
    }
}
