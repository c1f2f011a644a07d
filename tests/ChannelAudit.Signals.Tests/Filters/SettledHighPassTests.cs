using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Filters;

/// <summary>A high-pass that starts settled.</summary>
public sealed class SettledHighPassTests
{
    private const int Count = 6003;
    private const int Every = 50;

    /// <summary>SciPy's lfilter with lfilter_zi times the first sample.</summary>
    [Theory]
    [InlineData("1000", 1000)]
    [InlineData("2000", 2000)]
    public void OutputAgreesWithSciPy(string name, double rateHz)
    {
        var output = new double[Count];

        SettledHighPass.Filter(Butterworth.HighPass(20, rateHz), OracleSignals.Signal(22, Count, rateHz), 0, output);

        Near.All(OracleTable.Read("settled").Column(name, "output"), [.. output.Where((_, n) => n % Every == 0)], 1E-9);
    }

    /// <summary>In four parts or in one, warmed up or from the start: the same but for rounding.</summary>
    [Theory]
    [InlineData(500, 5503)]
    [InlineData(500, 2003)]
    [InlineData(1000, 1001)]
    public void PartsThatWarmUpGiveWhatOneRunGives(int carry, int wanted)
    {
        var section = Butterworth.HighPass(20, 1000);
        var signal = OracleSignals.Signal(22, Count, 1000);
        var whole = new double[Count];
        SettledHighPass.Filter(section, signal, 0, whole);

        var output = new double[wanted];
        SettledHighPass.Filter(section, signal.AsSpan(0, carry + wanted), carry, output);

        Assert.All(Enumerable.Range(0, wanted), n => Assert.Equal(whole[carry + n], output[n], 1E-9));
    }

    [Fact]
    public void EachWantedSampleNeedsItsPlace()
    {
        SettledHighPass.Filter(Butterworth.HighPass(20, 1000), [], 0, []);

        Assert.Throws<ArgumentException>(() => SettledHighPass.Filter(Butterworth.HighPass(20, 1000), new double[10], 3, new double[8]));
    }

    [Fact]
    public void AnOffsetMakesNoStep()
    {
        var output = new double[100];

        SettledHighPass.Filter(Butterworth.HighPass(20, 1000), Enumerable.Repeat(5000.0, 100).ToArray(), 0, output);

        Assert.All(output, value => Assert.Equal(0, value, 1E-9));
    }
}
