using ChannelAudit.Text;
using Xunit;

namespace ChannelAudit.Core.Tests.Text;

public sealed class OneLineTests
{
    [Theory]
    [InlineData("EMG\ncheek", "EMG?cheek")]
    [InlineData("a\tb\u001B[31m", "a?b?[31m")]
    [InlineData("\u202Eabc", "?abc")]
    [InlineData("Zoë 頬", "Zoë 頬")]
    public void NothingThatMovesTheCursorPasses(string text, string expected) => Assert.Equal(expected, OneLine.Of(text));

    [Fact]
    public void TheWholeOfALongTextIsAsPlain() => Assert.Equal(new string('x', 5000) + "?[31m?", OneLine.Whole(new string('x', 5000) + "\u001B[31m\u202E"));

    [Fact]
    public void TheWholeOfATextOfSeveralLinesIsOne() => Assert.Equal("a b  c?d", OneLine.Whole("a\nb\r\nc\u2028d"));

    [Fact]
    public void LongTextIsCut() => Assert.Equal(new string('x', 80) + "...", OneLine.Of(new string('x', 5000)));

    [Fact]
    public void LongListsSayHowManyMoreThereAre() => Assert.Equal(
        "1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14 and 1 more",
        OneLine.List(Enumerable.Range(1, 15).Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture))));
}
