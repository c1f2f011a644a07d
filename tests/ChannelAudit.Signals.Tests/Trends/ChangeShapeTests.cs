using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Trends;
using Xunit;

namespace ChannelAudit.Signals.Tests.Trends;

public sealed class ChangeShapeTests
{
    [Theory]
    [InlineData("step", ChangeKind.Step, 40, 40)]
    [InlineData("drift", ChangeKind.Drift, 30, 70)]
    [InlineData("episode", ChangeKind.Episode, 40, 60)]
    public void AMadeChangeIsFoundAsWhatItIs(string made, ChangeKind kind, int from, int to)
    {
        Pcg32 random = new(21);
        ChangeShape shape = Fit(i => Course(made, i) + (0.2 * random.NextGaussian()));

        Assert.Equal(kind, shape.Kind);
        Assert.InRange(shape.From, from - 5, from + 5);
        Assert.InRange(shape.To, to - 6, to + 6);
        Assert.InRange(shape.Before, 0.9, 1.1);
        Assert.InRange(shape.Change, 0.85, 1.15);
    }

    [Fact]
    public void ADriftThatGoesOnEndsWithTheSeries()
    {
        ChangeShape shape = Fit(i => Math.Max(0, i - 50) / 50.0);

        Assert.Equal(ChangeKind.Drift, shape.Kind);
        Assert.Equal(99, shape.To);
    }

    private static double Course(string made, int i) => 1 + (made switch
    {
        "step" => i < 40 ? 0 : 1,
        "drift" => Math.Clamp((i - 30) / 40.0, 0, 1),
        _ => i is >= 40 and < 60 ? 1 : 0,
    });

    private static ChangeShape Fit(Func<int, double> course) => ChangeShape.Of(
        [.. Enumerable.Range(0, 100).Select(i => (double)i)], [.. Enumerable.Range(0, 100).Select(course)], [.. Enumerable.Repeat(1.0, 100)]);
}
