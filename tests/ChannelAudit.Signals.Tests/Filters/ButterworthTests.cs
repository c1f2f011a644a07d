using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Filters;

public sealed class ButterworthTests
{
    /// <summary>SciPy's butter and lfilter.</summary>
    [Theory]
    [InlineData("highpass-20-1000", true, 20, 1000)]
    [InlineData("highpass-0.1-2000", true, 0.1, 2000)]
    [InlineData("lowpass-450-2000", false, 450, 2000)]
    [InlineData("lowpass-5-497.4", false, 5, 497.4)]
    public void CoefficientsAndOutputAgreeWithSciPy(string name, bool high, double cornerHz, double rateHz)
    {
        var section = high ? Butterworth.HighPass(cornerHz, rateHz) : Butterworth.LowPass(cornerHz, rateHz);
        var signal = OracleSignals.Signal(21, 120, rateHz);

        section.FilterInPlace(signal);

        var butter = OracleTable.Read("butter");
        Near.One(butter.Value(name, "b0"), section.B0, 1E-9);
        Near.One(butter.Value(name, "b1"), section.B1, 1E-9);
        Near.One(butter.Value(name, "b2"), section.B2, 1E-9);
        Near.One(butter.Value(name, "a1"), section.A1, 1E-9);
        Near.One(butter.Value(name, "a2"), section.A2, 1E-9);
        Near.All(OracleTable.Read("lfilter").Column(name, "output"), signal, 1E-9);
    }

    /// <summary>Butterworth's definition: the power is halved at the corner.</summary>
    [Fact]
    public void PowerIsHalvedAtTheCorner()
    {
        var signal = new double[20_000];
        for (var n = 0; n < signal.Length; n++)
        {
            signal[n] = Math.Sqrt(2) * Math.Sin(2 * Math.PI * 20 * n / 1000);
        }

        Butterworth.HighPass(20, 1000).FilterInPlace(signal);

        Near.One(Math.Sqrt(0.5), Signals.Statistics.Moments.Rms(signal.AsSpan(10_000)), 1E-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(500)]
    public void CornersOutsideTheBandAreRefused(double cornerHz)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.HighPass(cornerHz, 1000));
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.LowPass(cornerHz, 1000));
    }
}
