using ChannelAudit.Reports.Manual;

namespace ChannelAudit.Reports.Tests.Manual;

public sealed class PlainPageTests
{
    [Theory]
    [InlineData("# Big: `x`", "Big: x\n======\n")]
    [InlineData("## Small", "Small\n-----\n")]
    [InlineData("See [the **page**](../a/b.md#c), `a_b`, 2 * 3.", "See the page, a_b, 2 * 3.\n")]
    [InlineData("One two three four five six seven", "One two three four five six\nseven\n")]
    [InlineData("- One two three four five six seven\n  eight\n- b", "- One two three four five\n  six seven eight\n- b\n")]
    [InlineData("10. One two three four five six", "10. One two three four five\n    six\n")]
    [InlineData("```text\nas  it `stands` and is longer than the rest\n```", "  as  it `stands` and is longer than the rest\n")]
    [InlineData("a\n\nb", "a\n\nb\n")]
    [InlineData("| a | b |\n|---|---|\n| `1` | two \\| 3 |", "a  b\n-  -------\n1  two | 3\n")]
    [InlineData("", "\n")]
    public void BlocksArePlainAndFit(string markdown, string expected) => Assert.Equal(expected, PlainPage.Of(markdown, 28));

    [Fact]
    public void AWideTableIsWrappedInsideItsColumns()
    {
        string text = PlainPage.Of("| | limit |\n|---|---|\n| reject | one two three four five six |\n| pass | none |", 24);

        Assert.Equal("        limit\n------  ----------------\nreject  one two three\n        four five six\n\npass    none\n", text);
    }

    [Fact]
    public void EveryPageIsReadableWithoutMarkdown() => Assert.All(ManualText.Names, name =>
    {
        string text = ReasonManual.Of(name);

        Assert.DoesNotContain("**", text, StringComparison.Ordinal);
        Assert.DoesNotContain("](", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    });

    [Fact]
    public void AdviceThatTouchesSkinHasItsCaution()
    {
        Assert.Contains("\nSafety\n------\nCaution: no alcohol", ReasonManual.Of("bridge"), StringComparison.Ordinal);
        Assert.DoesNotContain("Caution: no alcohol", ReasonManual.Of("dropout"), StringComparison.Ordinal);
    }
}
