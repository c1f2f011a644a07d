namespace ChannelAudit.Signals.Tests.Oracles;

/// <summary>The signals of fixtures/oracles/make_oracles.py, by the same formulas.</summary>
internal static class OracleSignals
{
    public static double[] Noise(uint seed, int count)
    {
        var values = new double[count];
        var state = seed;
        for (var n = 0; n < count; n++)
        {
            state = unchecked((1664525 * state) + 1013904223);
            values[n] = (state / 4294967296.0) - 0.5;
        }

        return values;
    }

    public static double[] Signal(uint seed, int count, double rateHz)
    {
        var values = Noise(seed, count);
        for (var n = 0; n < count; n++)
        {
            values[n] = 100 + (2 * Math.Sin(2 * Math.PI * 50 * n / rateHz))
                + (0.5 * Math.Sin((2 * Math.PI * 7 * n / rateHz) + 1)) + (3 * values[n]);
        }

        return values;
    }

    public static (double[] A, double[] B) Pair(uint seed, int count, double rateHz)
    {
        var a = Signal(seed, count, rateHz);
        var noise = Noise(seed + 1, count);
        return (a, [.. a.Select((value, n) => (0.5 * value) + (2 * noise[n]))]);
    }
}
