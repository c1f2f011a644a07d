using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Spikes on a signal that is 1 and -1 in turn, at 1000 Hz: its robust scale is 1.4826, its rms 1.</summary>
public sealed class PopShapeTests
{
    private const int Count = 2000;
    private const int Top = 1000;

    [Theory]
    [InlineData(14.82, false)]
    [InlineData(14.83, true)]
    [InlineData(-14.83, true)]
    [InlineData(10 * Signals.Statistics.RobustScale.Normal, true)]
    public void TenTimesTheScaleIsHighEnough(double height, bool isSpike) => Assert.Equal(isSpike, IsSpike(height));

    [Fact]
    public void TheScaleIsThatOfTheSecondAround()
    {
        Assert.True(new PopShape(With((Top, 20)), 1000).IsSpike(Top, 1, out double scale));
        Assert.Equal(1.4826, scale, 4);
    }

    // What lies within 25 ms is not asked, nor what lies beyond half a second.
    [Fact]
    public void TheScaleLeavesOutWhatIsNear()
    {
        double[] y = Quiet();
        for (int i = Top - 25; i <= Top + 25; i++)
        {
            y[i] *= 2.4;
        }

        for (int i = 0; i < Top - 500; i++)
        {
            y[i] *= 100;
            y[^(i + 1)] *= 100;
        }

        y[Top] = 30;
        Assert.True(new PopShape(y, 1000).IsSpike(Top, 1, out double scale));
        Assert.Equal(1.4826, scale, 4);
    }

    [Theory]
    [InlineData(20, 20, true)]
    [InlineData(20, 20.1, false)]
    public void TheLeastHeightIsAsked(double height, double least, bool isSpike) => Assert.Equal(isSpike, new PopShape(With((Top, height)), 1000).IsSpike(Top, least, out _));

    // The width at half the height, on both sides of a top in its middle.
    [Theory]
    [InlineData(4, 5, true)]
    [InlineData(5, 4, true)]
    [InlineData(5, 5, false)]
    public void TenMillisecondsAreShort(int before, int after, bool isSpike)
    {
        double[] y = Quiet();
        for (int i = -before; i <= after; i++)
        {
            y[Top + i] = 20;
        }

        y[Top] = 40;
        Assert.Equal(isSpike, new PopShape(y, 1000).IsSpike(Top, 1, out _));
    }

    // The highest within 10 ms is the top; of two equals the first.
    [Theory]
    [InlineData(-5, 20, false)]
    [InlineData(5, 20, true)]
    [InlineData(5, 20.1, false)]
    [InlineData(-5, -19.9, true)]
    [InlineData(5, -21, false)]
    public void TheTopIsTheHighest(int distance, double other, bool isSpike) => Assert.Equal(isSpike, new PopShape(With((Top, 20), (Top + distance, other)), 1000).IsSpike(Top, 1, out _));

    [Theory]
    [InlineData(5, 10.1, true)]
    [InlineData(6, 10.1, false)]
    [InlineData(6, 10, true)]
    [InlineData(25, -10.1, false)]
    [InlineData(-25, 10.1, false)]
    [InlineData(26, 10.1, true)]
    [InlineData(-26, 10.1, true)]
    public void NothingBesideItIsHalfAsHigh(int distance, double other, bool isSpike) => Assert.Equal(isSpike, new PopShape(With((Top, 20), (Top + distance, other)), 1000).IsSpike(Top, 1, out _));

    // 8 times the rms of 10 to 100 ms on either side.
    [Theory]
    [InlineData(-100, -10, 2.4, true)]
    [InlineData(-100, -10, 2.5, true)]
    [InlineData(10, 100, 2.5, true)]
    [InlineData(-100, -10, 2.6, false)]
    [InlineData(10, 100, 2.4, true)]
    [InlineData(10, 100, 2.6, false)]
    [InlineData(101, 180, 9, true)]
    [InlineData(-180, -101, 9, true)]
    [InlineData(-9, 9, 2.6, true)]
    public void ItRisesAboveItsSides(int from, int to, double size, bool isSpike)
    {
        double[] y = Quiet();
        for (int i = from; i <= to; i++)
        {
            y[Top + i] *= size;
        }

        y[Top] = 20;
        Assert.Equal(isSpike, new PopShape(y, 1000).IsSpike(Top, 1, out _));
    }

    // 90 of 91 values of 2.4 leave room for 7, not for 10.
    [Theory]
    [InlineData(-10, 7, true)]
    [InlineData(-10, 10, false)]
    [InlineData(100, 7, true)]
    [InlineData(100, 10, false)]
    [InlineData(-100, 10, false)]
    [InlineData(101, 10, true)]
    public void BothEndsOfASideCount(int distance, double value, bool isSpike)
    {
        double[] y = Quiet();
        for (int i = 10; i <= 100; i++)
        {
            y[Top + (Math.Sign(distance) * i)] *= 2.4;
        }

        (y[Top], y[Top + distance]) = (20, value);
        Assert.Equal(isSpike, new PopShape(y, 1000).IsSpike(Top, 1, out _));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(Count - 1)]
    [InlineData(Count - 40)]
    [InlineData(7)]
    public void AtTheEndsOnlyWhatIsThereIsAsked(int at) => Assert.True(new PopShape(With((at, 20)), 1000).IsSpike(at, 1, out _));

    [Theory]
    [InlineData(20, false)]
    [InlineData(25, false)]
    [InlineData(26, true)]
    public void AStretchOfTwentyFiveMillisecondsHasNoScale(int side, bool isSpike) =>
        Assert.Equal(isSpike, new PopShape([.. Quiet()[..side], 40, .. Quiet()[..side]], 1000).IsSpike(side, 1, out _));

    [Fact]
    public void TheScaleGrowsWithTheSignal()
    {
        Assert.True(new PopShape([.. With((Top, 20)).Select(value => 3 * value)], 1000).IsSpike(Top, 1, out double scale));
        Assert.Equal(3 * 1.4826, scale, 3);
    }

    private static bool IsSpike(double height) => new PopShape(With((Top, height)), 1000).IsSpike(Top, 1, out _);

    private static double[] Quiet() => [.. Enumerable.Range(0, Count).Select(i => i % 2 == 0 ? 1.0 : -1)];

    private static double[] With(params (int At, double Height)[] spikes)
    {
        double[] y = Quiet();
        foreach ((int at, double height) in spikes)
        {
            y[at] = height;
        }

        return y;
    }
}
