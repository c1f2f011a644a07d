using ChannelAudit.Measures;
using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Measures;

/// <summary>A result keeps the filter of scoring in words: they say all of it.</summary>
public sealed class ScoringFilterWordsTests
{
    public static TheoryData<double?, double?, double[], int> Filters => new()
    {
        { 20, null, [], 2 }, { 20, 400, [], 4 }, { null, 400, [], 2 }, { 12.5, null, [50, 150], 3 }, { 28, 450, [60], 2 }, { null, null, [50], 2 },
    };

    [Theory]
    [MemberData(nameof(Filters))]
    public void WordsGiveTheFilterBack(double? high, double? low, double[] notches, int order)
    {
        ScoringFilter filter = ScoringFilter.Of(new ScoringSetup { HighpassHz = high, LowpassHz = low, NotchesHz = [.. notches], Order = order });

        ScoringSetup back = ScoringFilter.FromWords(filter.InWords)!.Setup;

        Assert.Equal((high, low, order), (back.HighpassHz, back.LowpassHz, back.Order));
        Assert.Equal(notches, back.NotchesHz.ToArray());
        Assert.Equal(filter.InWords, ScoringFilter.FromWords(filter.InWords)!.InWords);
    }

    [Theory]
    [InlineData("")]
    [InlineData("whatever passes")]
    [InlineData("high-pass 20")]
    public void OtherWordsGiveNone(string words) => Assert.Null(ScoringFilter.FromWords(words));
}
