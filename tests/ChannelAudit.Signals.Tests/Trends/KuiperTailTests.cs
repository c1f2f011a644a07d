using ChannelAudit.Signals.Trends;
using Xunit;

namespace ChannelAudit.Signals.Tests.Trends;

public sealed class KuiperTailTests
{
    /// <summary>Stephens 1970 (J. R. Statist. Soc. B 32, table 1), percentage points of V for long samples: 1.620, 1.747, 1.862, 2.001; from memory.</summary>
    [Theory]
    [InlineData(1.620, 0.10)]
    [InlineData(1.747, 0.05)]
    [InlineData(1.862, 0.025)]
    [InlineData(2.001, 0.01)]
    public void PercentagePointsAreThePublishedOnes(double range, double probability) =>
        Assert.InRange(KuiperTail.Of(range), probability * 0.98, probability * 1.02);

    [Fact]
    public void ItFallsFromOneToZero()
    {
        double[] tails = [.. Enumerable.Range(0, 400).Select(i => KuiperTail.Of(i / 50.0))];

        Assert.Equal(1, tails[0]);
        Assert.All(tails.Skip(1).Zip(tails), pair => Assert.True(pair.First <= pair.Second));
        Assert.InRange(tails[^1], 0, 1e-50);
    }
}
