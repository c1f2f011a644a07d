using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Wording;
using ChannelAudit.TestKit;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class ReasonLettersTests
{
    [Fact]
    public void EveryReasonHasALetterOfItsOwn()
    {
        string[] letters = [.. ReasonCode.All.Select(ReasonLetters.For)];

        Assert.DoesNotContain(ReasonLetters.Other, letters, StringComparer.Ordinal);
        Assert.Equal(letters.Length, letters.Distinct(StringComparer.Ordinal).Count());
        Assert.All(letters, letter => Assert.Equal(1, letter.Length));
    }

    [Fact]
    public void AnUnknownCodeStillHasALetter() => Assert.Equal(ReasonLetters.Other, ReasonLetters.For("no-such-code"));

    [Fact]
    public void TheGuideShowsTheSameLetters()
    {
        string guide = File.ReadAllText(Path.GetFullPath(RepositoryRoot.Fixture("../docs/guides/reading-the-ribbon.md")));

        Assert.All(ReasonLetters.All, letter => Assert.Contains(
            $"| {letter.Letter} | `{letter.Code}` | {ReasonWords.For(letter.Code).Name} |", guide, StringComparison.Ordinal));
    }
}
