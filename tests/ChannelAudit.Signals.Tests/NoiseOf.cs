using ChannelAudit.Signals.Random;

namespace ChannelAudit.Signals.Tests;

/// <summary>White normal noise with a named seed.</summary>
internal static class NoiseOf
{
    public static double[] Seed(ulong seed, int count, double deviation = 1)
    {
        var random = new Pcg32(seed);
        var values = new double[count];
        foreach (ref var value in values.AsSpan())
        {
            value = deviation * random.NextGaussian();
        }

        return values;
    }
}
