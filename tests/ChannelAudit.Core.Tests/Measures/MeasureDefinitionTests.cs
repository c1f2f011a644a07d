using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>A limit belongs to the worse side.</summary>
public sealed class MeasureDefinitionTests
{
    [Theory]
    [InlineData("clipped", 1, 1, true)]
    [InlineData("clipped", 0.999, 1, false)]
    [InlineData("headroom", 20, 20, true)]
    [InlineData("headroom", 20.001, 20, false)]
    [InlineData("line_effect", 10, 10, true)]
    [InlineData("line_effect", -10, 10, true)]
    [InlineData("line_effect", -9.999, 10, false)]
    public void AValueAtItsLimitReachesIt(string measure, double value, double limit, bool isReached) => Assert.Equal(isReached, MeasureCatalog.Get(measure).Reaches(value, limit));

    [Fact]
    public void AMeasureServesItsReasonAndTheOtherItNames()
    {
        MeasureDefinition whiteness = MeasureCatalog.Get("whiteness");

        Assert.True(whiteness.Serves("noise-floor"));
        Assert.True(whiteness.Serves("weak-response"));
        Assert.False(whiteness.Serves("clipping"));
    }
}
