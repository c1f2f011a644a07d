using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Criteria;

/// <summary>Which limits are asked of what a scoring filter leaves. docs/criteria.md says so in words.</summary>
public sealed class ScoredCriteriaTests
{
    [Theory]
    [InlineData("line-noise", "[{ line_left = 1.0, line_left_ratio = -10.0 }]", "[{ line_left = 5.0, line_left_ratio = 0.0 }]")]
    [InlineData("narrow-band", "[{ narrow_left = 1.0, narrow_left_ratio = -10.0 }]", "[{ narrow_left = 5.0, narrow_left_ratio = 0.0 }]")]
    [InlineData("low-frequency", "[{ lowfreq_left = 10.0, lowfreq_left_ratio = 1.0 }]", "[{ lowfreq_left = 50.0, lowfreq_left_ratio = 10.0 }]")]
    [InlineData("drift", "[{ headroom = 50.0 }]", "[{ headroom = 20.0 }]")]
    [InlineData("clipping", "[{ clipped = 0.01 }]", "[{ clipped = 1.0 }, { clipped_run = 10.0 }]")]
    public void TheSameNumbersAreAskedOfWhatIsLeft(string reason, string questionable, string reject)
    {
        Criterion criterion = Behind("highpass_hz = 20.0").For(reason);

        Assert.Equal((questionable, reject), (CriteriaText.Sets(criterion.Questionable), CriteriaText.Sets(criterion.Reject)));
    }

    [Fact]
    public void LimitsOfTheChannelFollowThoseOfTrials()
    {
        AuditCriteria behind = Behind("highpass_hz = 20.0");

        Assert.Equal("[{ line_left = 5.0, line_left_ratio = 0.0 }]", CriteriaText.Sets(behind.For("line-noise").ChannelReject));
        Assert.Equal("[{ headroom = 50.0 }]", CriteriaText.Sets(behind.For("drift").ChannelQuestionable));
        Assert.Equal(DefaultCriteria.All.Sha256, behind.Sha256);
    }

    [Fact]
    public void WhatDoesNotTakeDriftLeavesItsLimits() => Assert.Equal(
        CriteriaText.Sets(DefaultCriteria.All.For("drift").Questionable),
        CriteriaText.Sets(Behind("highpass_hz = 1.0").For("drift").Questionable));

    // An alternative that asks for drift and something else can no longer be reached as a whole.
    [Fact]
    public void AnAlternativeThatAsksForDriftGoesAsAWhole()
    {
        AuditCriteria own = CriteriaFile.Parse("[drift]\nquestionable = [{ drift_range = 200.0, headroom = 60.0 }, { headroom = 50.0 }]\n", "lab.toml");

        Assert.Equal("[{ headroom = 50.0 }]", CriteriaText.Sets(ScoredCriteria.Of(own, Filter("highpass_hz = 20.0")).For("drift").Questionable));
    }

    private static AuditCriteria Behind(string filter) => ScoredCriteria.Of(DefaultCriteria.All, Filter(filter));

    private static ScoringFilter Filter(string filter) => ScoringFilter.Of(SetupFile.Parse($"[scoring]\n{filter}\n", "setup.toml").Scoring);
}
