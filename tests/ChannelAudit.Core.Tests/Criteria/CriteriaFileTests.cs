using ChannelAudit.Criteria;
using ChannelAudit.TestKit;
using CsCheck;
using Xunit;

namespace ChannelAudit.Core.Tests.Criteria;

public sealed class CriteriaFileTests
{
    [Fact]
    public void AFileChangesOnlyWhatItLists()
    {
        AuditCriteria criteria = CriteriaFile.Parse(
            "[line-noise]\nreject = [{ line_rms = 8.0, line_ratio = 3.0 }]\nsource = \"pilot study\"\n", "lab.toml");

        Criterion line = criteria.For("line-noise");
        Assert.Equal("[{ line_rms = 8.0, line_ratio = 3.0 }]", CriteriaText.Sets(line.Reject));
        Assert.Equal("[{ line_rms = 1.0, line_ratio = -10.0 }]", CriteriaText.Sets(line.Questionable));
        Assert.Equal("pilot study", line.Source);
        Assert.Equal("lab.toml", criteria.FileName);
        Assert.Equal(
            [
                "[line-noise] reject: [{ line_rms = 5.0, line_ratio = 0.0 }] -> [{ line_rms = 8.0, line_ratio = 3.0 }]",
                "[line-noise] channel_reject: [{ line_rms = 5.0, line_ratio = 0.0 }] -> [{ line_rms = 8.0, line_ratio = 3.0 }]",
            ],
            CriteriaDifferences.Lines(DefaultCriteria.All, criteria).AsSpan().ToArray());
    }

    [Fact]
    public void AChannelFollowsItsTrialsOnlyWhereTheDefaultsJudgeBothAlikeAndTheFileDoesNotSayOtherwise()
    {
        AuditCriteria own = CriteriaFile.Parse(
            "[line-noise]\nreject = [{ line_rms = 8.0, line_ratio = 3.0 }]\nchannel_reject = [{ line_rms = 9.0, line_ratio = 4.0 }]\n", "lab.toml");
        AuditCriteria clipping = CriteriaFile.Parse("[clipping]\nreject = [{ clipped = 2.0 }]\n", "lab.toml");

        Assert.Equal("[{ line_rms = 9.0, line_ratio = 4.0 }]", CriteriaText.Sets(own.For("line-noise").ChannelReject));
        Assert.Equal("[{ clipped = 1.0 }]", CriteriaText.Sets(clipping.For("clipping").ChannelReject));
    }

    [Fact]
    public void TheDefaultsPrintedAreTheDefaultsRead()
    {
        AuditCriteria read = CriteriaFile.Parse(CriteriaText.Canonical(DefaultCriteria.All), "all.toml");

        Assert.Equal(DefaultCriteria.All.Sha256, read.Sha256);
        Assert.Equal(CriteriaText.Canonical(DefaultCriteria.All), CriteriaText.Canonical(read));
        Assert.Empty(CriteriaDifferences.Lines(DefaultCriteria.All, read));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[line-noise]\n")]
    [InlineData("[line-noise]\nsource = \"other words\"\n")]
    [InlineData("[line-noise]\nquestionable = [{ line_ratio = -10, line_rms = 1 }]\n")]
    [InlineData("[line-noise]\nreject = [{ line_rms = 5e0, line_ratio = -0.0 }]\n")]
    [InlineData("[[line-noise.questionable]]\nline_rms = 1.0\nline_ratio = -10.0\n")]
    public void AFileThatRepeatsTheDefaultsHasTheirHash(string toml) =>
        Assert.Equal(DefaultCriteria.All.Sha256, CriteriaFile.Parse(toml, "lab.toml").Sha256);

    [Fact]
    public void AnotherLimitHasAnotherHash() =>
        Gen.Double[0.02, 0.99].Sample(limit => !string.Equals(
            DefaultCriteria.All.Sha256,
            CriteriaFile.Parse(FormattableString.Invariant($"[clipping]\nquestionable = [{{ clipped = {limit:R} }}]\n"), "lab.toml").Sha256,
            StringComparison.Ordinal));

    [Fact]
    public void EveryLimitSurvivesBeingPrinted() => Gen.Double[1e-12, 1e12].Sample(limit =>
    {
        AuditCriteria first = CriteriaFile.Parse(
            FormattableString.Invariant($"[drift]\nquestionable = [{{ drift_range = {CriteriaText.Value(limit)} }}]\n"), "lab.toml");
        AuditCriteria second = CriteriaFile.Parse(CriteriaText.Canonical(first), "lab.toml");
        return first.For("drift").Questionable[0].Limits[0].Value.Equals(limit) && string.Equals(first.Sha256, second.Sha256, StringComparison.Ordinal);
    });

    [Fact]
    public void AListCanBeSwitchedOffAndShowsIt()
    {
        AuditCriteria criteria = CriteriaFile.Parse("[clipping]\nquestionable = []\n", "lab.toml");

        Assert.Empty(criteria.For("clipping").Questionable);
        Assert.Contains("[clipping]\nquestionable = []  # off\nreject = ", CriteriaText.Canonical(criteria), StringComparison.Ordinal);
        Assert.False(string.Equals(DefaultCriteria.All.Sha256, criteria.Sha256, StringComparison.Ordinal));
    }

    [Fact]
    public void AChangedLimitDoesNotGoOutUnderTheDefaultsSource()
    {
        AuditCriteria criteria = CriteriaFile.Parse("[clipping]\nreject = [{ clipped = 2.0 }]\n", "lab.toml");

        Assert.Equal("not given in lab.toml", criteria.For("clipping").Source);
        Assert.Equal(DefaultCriteria.All.For("drift").Source, criteria.For("drift").Source);
    }

    [Fact]
    public void ATableThatChangesNothingKeepsTheDefaultsSource() =>
        Assert.Equal(DefaultCriteria.All.For("drift").Source, CriteriaFile.Parse("[drift]\nreject = [{ drift_slope = 6000 }, { headroom = 20 }]\n", "lab.toml").For("drift").Source);

    [Fact]
    public void TheTextHasABlankLineBetweenReasonsAndMarksOnlyWhatIsOff()
    {
        string text = CriteriaText.Canonical(DefaultCriteria.All);

        Assert.StartsWith("[bridge]\nquestionable = [{ rho_high_rest = 0.12 }, ", text, StringComparison.Ordinal);
        Assert.Contains("\n\n[dropout]\nquestionable = [{ gap = 0.001 }]\nreject = [{ gap = 50.0 }, { missing = 5.0 }]\nchannel_questionable = []  # off\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ASourceWithQuotesSurvives()
    {
        AuditCriteria first = CriteriaFile.Parse("[clipping]\nsource = 'a \"b\" \\c'\n", "lab.toml");

        Assert.Equal("a \"b\" \\c", CriteriaFile.Parse(CriteriaText.Canonical(first), "lab.toml").For("clipping").Source);
    }

    [Fact]
    public void EqualLimitsAreInOrder() =>
        CriteriaFile.Parse("[flatline]\nquestionable = [{ flat_run = 200 }]\n[drift]\nquestionable = [{ headroom = 20 }]\n", "lab.toml");

    // An effect can be more than all there was, a deflection longer than the way to the nearer rail; no room at all is where headroom ends.
    [Theory]
    [InlineData("line-noise", "line_effect = 250.0")]
    [InlineData("clipping", "peak_use = 120.0")]
    [InlineData("drift", "headroom = 0.0")]
    public void LimitsAtTheEndOfWhatCanBeAreRead(string reason, string limit) =>
        Assert.Equal($"[{{ {limit} }}]", CriteriaText.Sets(CriteriaFile.Parse($"[{reason}]\nreject = [{{ {limit} }}]\n", "lab.toml").For(reason).Reject));

    [Fact]
    public void OfSeveralAlternativesTheMildestQuestionableLimitCounts() => CriteriaFile.Parse(
        "[line-noise]\nquestionable = [{ line_rms = 1.0, line_ratio = 10.0 }, { line_rms = 9.0, line_ratio = -10.0 }]\n", "lab.toml");

    [Fact]
    public void AFileIsReadWithItsName()
    {
        using var folder = new TemporaryFolder();

        Assert.Equal("lab.toml", CriteriaFile.Read(folder.Write("lab.toml", "[drift]\n")).FileName);
    }
}
