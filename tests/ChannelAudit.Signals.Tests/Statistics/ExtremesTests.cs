using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class ExtremesTests
{
    /// <summary>Against LINQ, with the least and the greatest at every place of every length: eight at a time, four, and the rest.</summary>
    [Fact]
    public void LeastAndGreatestAreFoundWhereverTheyAre()
    {
        for (var length = 1; length <= 40; length++)
        {
            for (var place = 0; place < length; place++)
            {
                var values = NoiseOf.Seed(5, length);
                values[place] = 100;
                values[(place + 7) % length] -= 200;

                Assert.Equal((values.Min(), values.Max()), Extremes.Of(values));
            }
        }
    }

    [Fact]
    public void OfNothingThereAreNone() => Assert.Throws<ArgumentException>(() => Extremes.Of([]));
}
