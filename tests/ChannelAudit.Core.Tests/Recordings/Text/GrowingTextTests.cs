using System.Text;
using ChannelAudit.Recordings;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>A text file that is still being written, or whose recorder was stopped in mid-line.</summary>
public sealed class GrowingTextTests
{
    private static readonly ReadOptions Growing = new(IsGrowing: true);
    private static readonly string Whole = "time,a,b\n" + TextCase.Rows(50, i => FormattableString.Invariant($"{i * 0.002:0.000},{i % 7}.25,{-i}"));

    [Theory]
    [InlineData("0.100")]
    [InlineData("0.100,")]
    [InlineData("0.100,1.25,-1")]
    [InlineData("0.100,1.")]
    public void WhileItGrowsALineWithoutAnEndIsLeftForTheNextLook(string rest)
    {
        using TextCase opened = TextCase.Open(Whole + rest, Growing);

        Assert.Equal(50, opened.Samples("a").Length);
        Assert.Empty(opened.Warnings());
    }

    [Theory]
    [InlineData("0.1")]
    [InlineData("0.100,1.25")]
    public void ALineThatWasTornIsLeftOutAndSaid(string rest)
    {
        using TextCase opened = TextCase.Open(Whole + rest);

        Assert.Equal(50, opened.Samples("a").Length);
        Assert.Equal(["last line: half written, with no end of its own: left out"], opened.Warnings());
    }

    [Fact]
    public void ALastLineThatOnlyLacksItsEndIsKept()
    {
        using TextCase opened = TextCase.Open(Whole + "0.100,1.25,-50");

        Assert.Equal(51, opened.Samples("a").Length);
        Assert.Empty(opened.Warnings());
    }

    [Fact]
    public void SixteenBitsACharacterAreCutBetweenCharacters()
    {
        using TextCase opened = TextCase.Open(Whole + "0.1", Growing, Encoding.Unicode);

        Assert.Equal(50, opened.Samples("a").Length);
    }

    [Fact]
    public void WithoutAWholeLineThereIsNothingYet() =>
        Assert.StartsWith("rec.csv", TextCase.Fault("time,a", Growing), StringComparison.Ordinal);
}
