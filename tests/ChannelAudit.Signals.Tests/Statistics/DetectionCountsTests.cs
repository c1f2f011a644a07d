using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class DetectionCountsTests
{
    /// <summary>By hand: 3 of 4 are found, 4 of 5 left alone; 0.75 + 0.8 - 1 (Youden 1950).</summary>
    [Fact]
    public void SharesAreThoseWorkedOutByHand()
    {
        DetectionCounts counts = new(3, 1, 1, 4);

        Assert.Equal((4, 5), (counts.Positives, counts.Negatives));
        Near.Within(1E-15, 0.75, counts.Sensitivity!.Value);
        Near.Within(1E-15, 0.8, counts.Specificity!.Value);
        Near.Within(1E-15, 0.55, counts.Youden!.Value);
    }

    [Fact]
    public void WithoutOneKindThereIsNoShareOfIt()
    {
        Assert.Null(new DetectionCounts(0, 0, 1, 4).Sensitivity);
        Assert.Null(new DetectionCounts(0, 0, 1, 4).Youden);
        Assert.Null(new DetectionCounts(3, 1, 0, 0).Specificity);
        Assert.Null(new DetectionCounts(3, 1, 0, 0).Youden);
    }
}
