using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using Xunit;

namespace ChannelAudit.Reports.Tests.Wording;

/// <summary>The effect of a finding as people read it.</summary>
public sealed class EffectWordsTests
{
    [Theory]
    [InlineData(1.8, 58.06, 3.1, null, "adds 1.8 \u00B5V to 3.1 (+58.1 %)")]
    [InlineData(-0.02, -0.4, 5.0, "at least: as of a Gaussian", "takes 0.02 \u00B5V from 5 (-0.4 %); at least: as of a Gaussian")]
    [InlineData(800.0, 9900.0, 8.0, null, "adds more than 9900 %")]
    [InlineData(null, 279.4, null, null, "adds 279 %")]
    [InlineData(null, -100.0, null, null, "takes 100 %")]
    [InlineData(0.0, 0.0, 5.0, "the score rests on 93 % of the window", "changes no amplitude; the score rests on 93 % of the window")]
    [InlineData(null, null, null, "shorter than 1 s", "not assessed: shorter than 1 s")]
    public void AnEffectSaysHowMuchOnWhat(double? microvolts, double? percent, double? without, string? note, string words) =>
        Assert.Equal(words, EffectWords.Of(new ScoreEffect(microvolts, percent, without, note)));

    [Fact]
    public void AReasonWithoutAnEffectSaysNothing() => Assert.Empty(EffectWords.Of(null));
}
