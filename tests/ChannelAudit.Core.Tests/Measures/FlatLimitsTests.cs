using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>From when on a channel is flat, by the rules of docs/measures/flatline.md, worked out by hand.</summary>
public sealed class FlatLimitsTests
{
    // Three times ln(10^6) over -ln of the chance: 32.6 at 0.28, 59.8 at 0.5, 61.6 at 0.51, and at 1 as if it were 0.999.
    [Theory]
    [InlineData(0.2709, 0.9, 1, true, 25, false)]
    [InlineData(0.28, 0.5, 1, true, 32, true)]
    [InlineData(0.28, 0.75, 1, true, 32, true)]
    [InlineData(0.28, 0.76, 1, true, 0, true)]
    [InlineData(0.5, 0.5, 1, true, 59, true)]
    [InlineData(0.51, 0.5, 1, true, 0, true)]
    [InlineData(0.51, 0.5, 0.5, true, 61, true)]
    [InlineData(0.51, 0.5, 0.5, false, 0, true)]
    [InlineData(1, 1, 0.1, true, 41_425, true)]
    public void ACoarseStepAsksForLongerRunsOrNone(double chance, double share, double step, bool isMicrovolts, int held, bool isCoarse)
    {
        FlatLimits limits = FlatLimits.Of(1000, step, isMicrovolts, chance, share, 1_000_000);

        Assert.Equal((held, isCoarse), (limits.HeldRun, limits.IsCoarse));
        Assert.Equal(held > 0 || chance < 0.5, limits.CanTell);
    }

    [Theory]
    [InlineData(0.1, 0.2, true, 0.2002)]
    [InlineData(0.1, 0.05, true, 0.1)]
    [InlineData(0.1, 0.05, false, 0.05005)]
    [InlineData(0.1, 0, true, 0)]
    [InlineData(0.499, 0.2, true, 0.2002)]
    [InlineData(0.5, 0.2, true, 0)]
    public void AStillChannelMovesByOneStepOrATenthOfAMicrovolt(double chance, double step, bool isMicrovolts, double range) =>
        Assert.Equal(range, FlatLimits.Of(1000, step, isMicrovolts, chance, 0, 1_000_000).StillRange, 12);

    [Theory]
    [InlineData(1000, 100)]
    [InlineData(497.4, 50)]
    [InlineData(10, 2)]
    public void ItIsStillForATenthOfASecond(double rateHz, int length) => Assert.Equal(length, FlatLimits.Of(rateHz, 0.1, true, 0.1, 0, 1000).StillLength);
}
