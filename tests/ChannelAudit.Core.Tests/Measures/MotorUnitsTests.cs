using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Trains of alike spikes at 1000 Hz: numbers, likeness, sign and height, each on either side of its limit.</summary>
public sealed class MotorUnitsTests
{
    private const int Top = 1000;
    private static readonly double[] Potential = [-0.2, -0.4, 0.3, 1, 0.3, -0.4, -0.2];
    private static readonly double[] Step = [0, 0, 0.1, 1, 0.9, 0.8, 0.7];

    // Besides the one that is asked about.
    [Theory]
    [InlineData(3, false)]
    [InlineData(4, true)]
    [InlineData(8, true)]
    public void FourOthersMakeATrain(int others, bool isTrain) => Assert.Equal(isTrain, Hold(Train(others, 10, Potential)));

    [Theory]
    [InlineData(1, true)]
    [InlineData(2.9, true)]
    [InlineData(3.1, false)]
    [InlineData(-1, false)]
    public void TheOneIsNotMuchTallerAndNotTurnedOver(double times, bool isTrain)
    {
        double[] y = Train(6, 10, Potential);
        Put(y, Top, 10 * (times - 1), Potential);

        Assert.Equal(isTrain, Hold(y));
    }

    [Fact]
    public void AnotherShapeIsNoMemberOfTheTrain()
    {
        double[] y = Train(6, 10, Potential);
        Put(y, Top, -10, Potential);
        Put(y, Top, 10, Step);

        Assert.False(Hold(y));
    }

    // The scale is 1: 5 is high enough, 4.9 is not.
    [Theory]
    [InlineData(5, true)]
    [InlineData(4.9, false)]
    public void OnlySpikesOfFiveTimesTheScaleAreCounted(double height, bool isTrain) => Assert.Equal(isTrain, Hold(Train(6, height, Potential)));

    [Theory]
    [InlineData(10, true)]
    [InlineData(9.9, false)]
    public void TheScaleIsThatOfTheSignal(double height, bool isTrain) => Assert.Equal(isTrain, new MotorUnits(Train(6, height, Potential), 1000).Hold(Top, 2));

    // Of two spikes 5 ms apart only the higher is a top, of two 6 ms apart both.
    [Theory]
    [InlineData(5, 0)]
    [InlineData(-5, 0)]
    [InlineData(6, 1)]
    [InlineData(-6, 1)]
    public void ATopIsTheHighestWithinFiveMilliseconds(int distance, int tops)
    {
        double[] y = new double[2001];
        (y[Top], y[1300], y[1300 + distance]) = (10, 9, 30);

        Assert.Equal(tops, new MotorUnits(y, 1000).Kin(Top, 1).Alike);
    }

    [Fact]
    public void SpikesAtTheVeryEndsAreNoPeaks()
    {
        double[] y = new double[201];
        (y[100], y[4], y[196], y[1], y[200]) = (10, 10, 10, 10, 10);

        Assert.Equal((0, 0), new MotorUnits(y, 1000).Kin(100, 1));
    }

    [Fact]
    public void AnOffsetChangesNoLikenessAndAPlainOffsetIsLikeNothing()
    {
        double[] near = [2, 2, 1, 3, 12, 3, 1, 2, 2, 2, 2];
        double[] wide = [.. Enumerable.Repeat(7.0, 8), .. near.Select(value => value + 5)];

        Assert.Equal(1, MotorUnits.KinOf(near, 10, wide, 10));
        Assert.Equal(0, MotorUnits.KinOf(near, 10, [.. Enumerable.Repeat(7.0, 19)], 10));
    }

    [Theory]
    [InlineData(500, 4)]
    [InlineData(501, 3)]
    public void HalfASecondIsTheReach(int last, int alike)
    {
        double[] y = new double[2001];
        foreach (int at in new[] { Top, Top + 60, Top + 120, Top - 60, Top + last })
        {
            Put(y, at, 10, Potential);
        }

        Assert.Equal((alike, 0), new MotorUnits(y, 1000).Kin(Top, 1));
    }

    [Fact]
    public void KinAreAlikeAndThoseTurnedOverCountedApart()
    {
        double[] y = Train(4, 10, Potential);
        Put(y, 700, -10, Potential);
        Put(y, 800, -19, Potential);
        Put(y, 850, -21, Potential);
        Put(y, 750, 10, Step);

        Assert.Equal((4, 2), new MotorUnits(y, 1000).Kin(Top, 1));
    }

    // Of two tops of one height the first is the top: a spike is counted once.
    [Fact]
    public void APlateauIsOnePeak()
    {
        double[] y = Train(4, 10, Potential);
        (y[700], y[701]) = (10, 10);

        Assert.Equal(4, new MotorUnits(y, 1000).Kin(Top, 1).Alike);
    }

    [Fact]
    public void OneAtTheEndHasNoShape()
    {
        double[] y = new double[2001];
        Put(y, 3, 10, Potential);

        Assert.True(new MotorUnits(y, 1000).NearShape(4).IsEmpty);
        Assert.Equal(11, new MotorUnits(y, 1000).NearShape(5).Length);
        Assert.Equal(19, new MotorUnits(y, 1000).WideShape(9).Length);
        Assert.True(new MotorUnits(y, 1000).WideShape(8).IsEmpty);
        Assert.Equal(11, new MotorUnits(y, 1000).NearShape(1995).Length);
        Assert.True(new MotorUnits(y, 1000).NearShape(1996).IsEmpty);
    }

    [Theory]
    [InlineData(1, 10, 10, 1)]
    [InlineData(-1, 10, 10, -1)]
    [InlineData(1, 10, 5, 1)]
    [InlineData(1, 10, 4.9, 0)]
    [InlineData(1, 10, 20, 1)]
    [InlineData(1, 10, 20.1, 0)]
    public void KinAreHalfToTwiceAsHigh(double sign, double height, double otherHeight, int kin)
    {
        double[] wide = new double[19];
        double[] near = new double[11];
        for (int i = 0; i < Potential.Length; i++)
        {
            near[2 + i] = height * Potential[i];

            // Two samples later than the middle: its other phase was taken for its top.
            wide[8 + i] = sign * otherHeight * Potential[i];
        }

        Assert.Equal(kin, MotorUnits.KinOf(near, height, wide, otherHeight));
        Assert.Equal(0, MotorUnits.KinOf([], height, wide, otherHeight));
        Assert.Equal(0, MotorUnits.KinOf(near, height, new double[19], otherHeight));
    }

    private static bool Hold(double[] y) => new MotorUnits(y, 1000).Hold(Top, 1);

    private static double[] Train(int others, double height, double[] shape)
    {
        double[] y = new double[2001];
        Put(y, Top, height, shape);
        for (int n = 1; n <= others; n++)
        {
            Put(y, Top + (50 * n), height, shape);
        }

        return y;
    }

    private static void Put(double[] y, int top, double height, double[] shape)
    {
        for (int i = 0; i < shape.Length; i++)
        {
            y[top - (shape.Length / 2) + i] += height * shape[i];
        }
    }
}
