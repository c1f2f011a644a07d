using ChannelAudit.Signals.Spectra;
using MathNet.Numerics;

namespace ChannelAudit.Signals.Tests.Spectra;

/// <summary>
/// Figures of merit as printed by Harris 1978 (Proc IEEE 66:51–83, table I; page from memory), with more digits where
/// they follow from the coefficients. Windows other than ours come from MathNet.Numerics, its symmetric forms one point
/// longer and cut.
/// </summary>
public sealed class WindowFiguresTests
{
    [Theory]
    [InlineData("rectangular", 1.000, 1.000, 3.92)]
    [InlineData("bartlett", 0.500, 1.3333, 1.82)]
    [InlineData("hann", 0.500, 1.500, 1.42)]
    [InlineData("hamming", 0.540, 1.3628, 1.75)]
    [InlineData("blackman", 0.420, 1.7268, 1.10)]
    [InlineData("flat-top", 0.2156, 3.770, 0.01)]
    public void FiguresAgreeWithHarris(string name, double gain, double bandwidth, double scallop)
    {
        var window = Make(name, 1024);

        Near.Within(0.0006, gain, WindowFigures.CoherentGain(window));
        Near.Within(0.0006, bandwidth, WindowFigures.NoiseBandwidthBins(window));
        Near.Within(0.006, scallop, WindowFigures.ScallopLossDb(window));
    }

    /// <summary>Closed form: Σw = N/2 and Σw² = 3N/8 exactly, hence 3/2 bins.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(64)]
    [InlineData(497)]
    [InlineData(2000)]
    public void PeriodicHannHasExactlyOneAndAHalfBins(int length)
    {
        var window = HannWindow.Periodic(length);

        Near.One(0.5, WindowFigures.CoherentGain(window), 1E-14);
        Near.One(1.5, WindowFigures.NoiseBandwidthBins(window), 1E-14);
    }

    /// <summary>MathNet.Numerics' HannPeriodic.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(497)]
    [InlineData(2000)]
    public void PeriodicHannAgreesWithMathNet(int length) =>
        Near.All(Window.HannPeriodic(length), HannWindow.Periodic(length), 1E-12);

    [Fact]
    public void EmptyWindowsAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => HannWindow.Periodic(0));
        Assert.Throws<ArgumentException>(() => WindowFigures.CoherentGain([]));
        Assert.Throws<ArgumentException>(() => WindowFigures.NoiseBandwidthBins([]));
        Assert.Throws<ArgumentException>(() => WindowFigures.ScallopLossDb([]));
    }

    private static double[] Make(string name, int length) => name switch
    {
        "rectangular" => [.. Enumerable.Repeat(1.0, length)],
        "hann" => HannWindow.Periodic(length),
        "hamming" => Hamming(length),
        "bartlett" => Window.Bartlett(length + 1)[..length],
        "blackman" => Window.Blackman(length + 1)[..length],
        _ => Scaled(Window.FlatTop(length + 1)[..length]),
    };

    /// <summary>Harris' rounded coefficients; MathNet.Numerics has 0.53836 and 0.46164.</summary>
    private static double[] Hamming(int length) =>
        [.. Enumerable.Range(0, length).Select(n => 0.54 - (0.46 * Math.Cos(2 * Math.PI * n / length)))];

    /// <summary>MathNet's flat-top is not scaled to a peak of 1.</summary>
    private static double[] Scaled(double[] window) => [.. window.Select(weight => weight / window.Max())];
}
