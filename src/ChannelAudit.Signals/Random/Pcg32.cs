using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Random;

/// <summary>Seeded random numbers: PCG-XSH-RR with 64 bits of state and 32 bits of output (O'Neill 2014).</summary>
/// <param name="seed">Starting state.</param>
/// <param name="stream">Which of 2^63 sequences; the highest bit does not count.</param>
/// <remarks>The same seed and stream give the same numbers, bit for bit, on every machine.</remarks>
public sealed class Pcg32(ulong seed, ulong stream = 1)
{
    private const ulong Multiplier = 6364136223846793005;

    private readonly ulong _increment = (stream << 1) | 1;

    // The reference takes one step from state 0, adds the seed and takes another.
    private ulong _state = unchecked(((((stream << 1) | 1) + seed) * Multiplier) + ((stream << 1) | 1));
    private double _spare = double.NaN;

    /// <summary>Gives the next number.</summary>
    /// <returns>0 to 2^32 − 1, all equally likely.</returns>
    public uint Next()
    {
        var old = _state;
        _state = unchecked((old * Multiplier) + _increment);
        var shifted = (uint)(((old >> 18) ^ old) >> 27);
        return uint.RotateRight(shifted, (int)(old >> 59));
    }

    /// <summary>Gives a number from the unit interval, made of two draws.</summary>
    /// <returns>A multiple of 2^−53, at least 0 and below 1.</returns>
    public double NextDouble()
    {
        ulong high = Next() >> 5;
        ulong low = Next() >> 6;
        return ((high << 26) | low) * (1.0 / (1UL << 53));
    }

    /// <summary>Gives a number of the standard normal distribution.</summary>
    /// <returns>Mean 0, standard deviation 1.</returns>
    /// <remarks>Marsaglia's polar method (Marsaglia and Bray 1964) with <see cref="RepeatableMath.Log"/>; every second
    /// number is the other coordinate of the same point.</remarks>
    public double NextGaussian()
    {
        if (!double.IsNaN(_spare))
        {
            var spare = _spare;
            _spare = double.NaN;
            return spare;
        }

        double u, v, square;
        do
        {
            u = (2 * NextDouble()) - 1;
            v = (2 * NextDouble()) - 1;
            square = (u * u) + (v * v);
        }
        while (square is >= 1 or 0);

        var factor = Math.Sqrt(-2 * RepeatableMath.Log(square) / square);
        _spare = v * factor;
        return u * factor;
    }
}
