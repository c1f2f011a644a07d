using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class ClippedGaussianTests
{
    /// <summary>SciPy's normal distribution and its numerical integration.</summary>
    [Theory]
    [InlineData("1e-05")]
    [InlineData("0.0001")]
    [InlineData("0.01")]
    [InlineData("0.02")]
    [InlineData("0.05")]
    [InlineData("0.3")]
    [InlineData("0.9")]
    public void LimitAndLossAgreeWithSciPy(string name)
    {
        var table = OracleTable.Read("clippedgaussian");
        var share = table.Value(name, "share");

        // The loss is a difference of two numbers of the size of share times limit.
        Near.One(table.Value(name, "limit"), ClippedGaussian.LimitOf(share), 1E-9);
        Near.One(table.Value(name, "loss"), ClippedGaussian.RectifiedLoss(share), 1E-8);
    }

    [Fact]
    public void NothingCutLosesNothingAndAllCutLosesAll()
    {
        Assert.Equal(0, ClippedGaussian.RectifiedLoss(0));
        Assert.Equal(1, ClippedGaussian.RectifiedLoss(1), 1E-9);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void OtherSharesAreRefused(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ClippedGaussian.RectifiedLoss(share));
}
