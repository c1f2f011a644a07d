using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

public sealed class PathPatternTests
{
    [Theory]
    [InlineData("P07*", "P07_day1.edf", true)]
    [InlineData("P07", "P07.edf", true)]
    [InlineData("P07.edf", "P07.edf", true)]
    [InlineData("P07", "P071.edf", false)]
    [InlineData("P07*", "day1/P07.edf", false)]
    [InlineData("day?/P07*", "day1/P07.edf", true)]
    [InlineData("**/P07*", "a/b/P07.edf", true)]
    [InlineData("**/P07*", "P07.edf", true)]
    [InlineData("a/**", "a/b/c.edf", true)]
    [InlineData("a/**", "ab/c.edf", false)]
    [InlineData("p[0-9](x)+.$^", "p[0-9](x)+.$^", true)]
    public void StarsStayWithinANameAndTwoOfThemDoNot(string pattern, string path, bool fits) =>
        Assert.Equal(fits, PathPattern.Of(pattern, [], out _)!.Fits(path));

    [Fact]
    public void NamesInBracesAreHandedOut()
    {
        PathPattern pattern = PathPattern.Of("{group}/{participant}_*", ["participant", "group"], out _)!;

        Assert.Equal(("waiting list", "P07"), (pattern.Find("waiting list/P07_day_1.edf", "group"), pattern.Find("waiting list/P07_day_1.edf", "participant")));
        Assert.Null(pattern.Find("P07_day1.edf", "participant"));
    }

    [Theory]
    [InlineData("{session}_*", "{session}")]
    [InlineData("{participant}/{participant}", "{participant}")]
    [InlineData("{}", "{}")]
    public void OtherNamesInBracesAreRefused(string pattern, string said)
    {
        Assert.Null(PathPattern.Of(pattern, ["participant", "group"], out string? unknown));
        Assert.Equal(said, unknown);
    }

    /// <summary>A pattern that would take for ever on a long path must end.</summary>
    [Fact]
    public void ALongPathEndsSoon() => Assert.False(PathPattern.Of("*a*a*a*a*b", [], out _)!.Fits(new string('a', 200)));
}
