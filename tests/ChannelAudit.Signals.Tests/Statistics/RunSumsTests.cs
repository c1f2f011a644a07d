using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Tests.Statistics;

/// <summary>Four sums at a time against a plain loop.</summary>
public sealed class RunSumsTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(100)]
    public void EverySumHasTheBitsOfAPlainLoop(int length)
    {
        var values = NoiseOf.Seed(5, (RunSums.Runs * length) + 3);
        var (plain, magnitudes) = (new double[RunSums.Runs], new double[RunSums.Runs]);
        for (var at = 0; at < RunSums.Runs * length; at++)
        {
            plain[at / length] += values[at];
            magnitudes[at / length] += Math.Abs(values[at]);
        }

        var (sums, ofMagnitudes) = (new double[RunSums.Runs], new double[RunSums.Runs]);
        RunSums.Of(values, length, sums);
        RunSums.OfMagnitudes(values, length, ofMagnitudes);

        Assert.Equal(plain, sums);
        Assert.Equal(magnitudes, ofMagnitudes);
    }

    [Fact]
    public void FewerValuesThanFourRunsAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RunSums.Of(new double[11], 3, new double[4]));
        Assert.Throws<ArgumentOutOfRangeException>(() => RunSums.OfMagnitudes(new double[11], 3, new double[4]));
    }
}
