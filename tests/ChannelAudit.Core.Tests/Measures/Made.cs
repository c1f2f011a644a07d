using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Tests.Measures;

/// <summary>Plain signals and channels for tests of single measures; nothing of the made sessions.</summary>
internal static class Made
{
    /// <summary>A channel without rails.</summary>
    public static Channel Channel(double rateHz, double step = 0, double? lowpassHz = null) => new()
    {
        Index = 0,
        Label = "EMG",
        RawLabel = "EMG",
        FileUnit = "uV",
        Rate = Rational.FromDecimal((decimal)rateHz),
        Step = step,
        Prefilter = new Prefilter(null, lowpassHz, [], string.Empty),
        Stretches = [],
    };

    /// <summary>The frame of a channel with 50 Hz mains.</summary>
    public static SpectralFrame Frame(double rateHz, double lineHz = 50, double nominalHz = 50, double? lowpassHz = null) =>
        SpectralFrame.Of(Channel(rateHz, lowpassHz: lowpassHz), nominalHz, lineHz, []);

    /// <summary>A sine of an amplitude (peak).</summary>
    public static double[] Sine(double amplitude, double hz, double rateHz, int count, double phase = 0) =>
        [.. Enumerable.Range(0, count).Select(n => amplitude * Math.Sin((2 * Math.PI * hz * n / rateHz) + phase))];

    /// <summary>White noise of a standard deviation.</summary>
    public static double[] Noise(ulong seed, double deviation, int count)
    {
        Pcg32 random = new(seed);
        return [.. Enumerable.Range(0, count).Select(_ => deviation * random.NextGaussian())];
    }

    /// <summary>Sample by sample.</summary>
    public static double[] Sum(double[] first, params double[][] others) =>
        [.. first.Select((value, i) => value + others.Sum(other => other[i]))];

    /// <summary>Stretches behind one another on the time axis.</summary>
    public static ImmutableArray<Stretch> Stretches(params (long Start, long Length)[] parts)
    {
        long stored = 0;
        List<Stretch> stretches = [];
        foreach ((long start, long length) in parts)
        {
            stretches.Add(new Stretch(start, length, stored));
            stored += length;
        }

        return [.. stretches];
    }

    /// <summary>Bins as <c>20-47 53-90</c>.</summary>
    public static string Text(IEnumerable<BinRange> ranges) => string.Join(' ', ranges.Select(range => FormattableString.Invariant($"{range.From}-{range.To}")));
}
