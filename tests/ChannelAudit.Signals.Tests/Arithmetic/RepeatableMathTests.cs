using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Tests.Arithmetic;

/// <summary>Against the functions of System.Math, which are the system's library.</summary>
public sealed class RepeatableMathTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(1000)]
    [InlineData(4974)]
    public void PartsOfTheCircleAgreeWithTheSystemLibrary(long parts)
    {
        for (var k = -parts; k <= 2 * parts; k++)
        {
            var (sin, cos) = RepeatableMath.SinCosOfPart(k, parts);

            Near.Within(3E-15, Math.Sin(2 * Math.PI * k / parts), sin);
            Near.Within(3E-15, Math.Cos(2 * Math.PI * k / parts), cos);
            Near.One(1, (sin * sin) + (cos * cos), 4E-16);
        }
    }

    [Fact]
    public void QuarterTurnsAreExact()
    {
        Assert.Equal((0.0, 1.0), RepeatableMath.SinCosOfPart(0, 4));
        Assert.Equal((1.0, 0.0), RepeatableMath.SinCosOfPart(1, 4));
        Assert.Equal((0.0, -1.0), RepeatableMath.SinCosOfPart(2, 4));
        Assert.Equal((-1.0, 0.0), RepeatableMath.SinCosOfPart(3, 4));
    }

    [Fact]
    public void TurnsAgreeWithTheSystemLibraryOnBothSidesOfZero()
    {
        for (var turns = -1.5; turns < 1.5; turns += 0.0137)
        {
            var (sin, cos) = RepeatableMath.SinCosTurns(turns);

            Near.Within(3E-15, Math.Sin(2 * Math.PI * turns), sin);
            Near.Within(3E-15, Math.Cos(2 * Math.PI * turns), cos);
        }
    }

    /// <summary>A hair below a whole turn is a whole turn; what is no number has no sine.</summary>
    [Fact]
    public void TheEndsOfTheNumbersHaveAnAnswer()
    {
        Assert.Equal((0.0, 1.0), RepeatableMath.SinCosTurns(-1E-20));
        Assert.Equal((double.NaN, double.NaN), RepeatableMath.SinCosTurns(double.NaN));
        Assert.Equal((double.NaN, double.NaN), RepeatableMath.SinCosTurns(double.NegativeInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => RepeatableMath.SinCosOfPart(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RepeatableMath.SinCosOfPart(1, -4));
    }

    [Fact]
    public void LogarithmAgreesWithTheSystemLibrary()
    {
        for (var value = 1E-300; value < 1E300; value *= 1.7319)
        {
            Near.One(Math.Log(value), RepeatableMath.Log(value), 1E-15);
        }

        Near.One(Math.Log(0.999), RepeatableMath.Log(0.999), 1E-14);
        Assert.Equal(0, RepeatableMath.Log(1));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void LogarithmRefusesWhatHasNone(double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RepeatableMath.Log(value));
}
