using ChannelAudit.Signals.Tests.Oracles;
using ChannelAudit.Signals.Trends;
using Xunit;

namespace ChannelAudit.Signals.Tests.Trends;

public sealed class HolmCorrectionTests
{
    /// <summary>statsmodels' multipletests(method='holm').</summary>
    [Theory]
    [InlineData("one")]
    [InlineData("few")]
    [InlineData("many")]
    [InlineData("ties")]
    public void CorrectedProbabilitiesAgreeWithStatsmodels(string name)
    {
        OracleTable table = OracleTable.Read("holm");

        Near.All(table.Column(name, "corrected"), HolmCorrection.Of(table.Column(name, "p")), 1E-12);
    }

    /// <summary>By hand: 3 x 0.01, 2 x 0.02, 1 x 0.03 raised to what came before.</summary>
    [Fact]
    public void ALaterStepIsNeverBelowAnEarlierOne() => Near.All([0.04, 0.03, 0.04], HolmCorrection.Of([0.03, 0.01, 0.02]), 1E-12);

    [Fact]
    public void NothingIsCorrectedToNothing() => Assert.Empty(HolmCorrection.Of([]));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void WhatIsNoProbabilityIsRefused(double p) => Assert.Throws<ArgumentOutOfRangeException>(() => HolmCorrection.Of([0.5, p]));
}
