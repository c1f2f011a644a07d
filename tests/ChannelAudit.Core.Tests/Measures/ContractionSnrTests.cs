using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Contraction over rest. Outside: decibels worked out by hand.</summary>
public sealed class ContractionSnrTests
{
    // 20 µV over 2 µV: 10 log10((400 - 4) / 4) = 19.956 dB; the plain ratio would be 20 dB.
    [Theory]
    [InlineData(400, 4, 19.9564)]
    [InlineData(2, 1, 0)]
    [InlineData(5, 1, 6.0206)]
    [InlineData(1.01, 1, -20)]
    public void TheRatioIsThatOfWhatIsAddedToRest(double contraction, double rest, double decibels) =>
        Assert.Equal(decibels, ContractionSnr.Of(contraction, rest), 4);

    [Theory]
    [InlineData(1, 1)]
    [InlineData(0.5, 1)]
    [InlineData(0, 1)]
    [InlineData(1.000001, 1)]
    public void NoContractionIsTheFloorAndNotMinusInfinity(double contraction, double rest) =>
        Assert.Equal(ContractionSnr.FloorDb, ContractionSnr.Of(contraction, rest));

    [Fact]
    public void GainChangesNothing() => Assert.Equal(ContractionSnr.Of(400, 4), ContractionSnr.Of(400 * 49, 4 * 49), 12);
}
