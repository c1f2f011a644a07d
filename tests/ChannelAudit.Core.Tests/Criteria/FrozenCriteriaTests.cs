using ChannelAudit.Criteria;
using Xunit;

namespace ChannelAudit.Core.Tests.Criteria;

public sealed class FrozenCriteriaTests
{
    private static readonly AuditCriteria Lab = CriteriaFile.Parse("[line-noise]\nreject = [{ line_rms = 8, line_ratio = 3 }]\nsource = \"pilot\"\n", "lab.toml");

    private static string Frozen => FrozenCriteria.Render(Lab, "2026-03-01", "1.0.0");

    [Fact]
    public void AFrozenFileHoldsTheLimitsAndKnowsThatTheyAreUnchanged()
    {
        AuditCriteria read = CriteriaFile.Parse(Frozen, "frozen.toml");

        Assert.Equal(Lab.Sha256, read.Sha256);
        Assert.Equal(Lab.For("line-noise").Source, read.For("line-noise").Source);
        Assert.True(read.Frozen!.IsUnchanged);
        Assert.Equal(("2026-03-01", "1.0.0", Lab.Sha256), (read.Frozen.Date, read.Frozen.Version, read.Frozen.Sha256));
        Assert.Null(Lab.Frozen);
    }

    [Fact]
    public void CommentsSourcesAndLineEndsChangeNothing()
    {
        string other = Frozen.Replace("source = \"pilot\"", "source = \"another word\" # said later", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal);

        Assert.NotEqual(Frozen, other, StringComparer.Ordinal);
        Assert.True(CriteriaFile.Parse(other, "frozen.toml").Frozen!.IsUnchanged);
    }

    [Fact]
    public void ALimitThatWasChangedAfterwardsIsNamedWithBothValues()
    {
        int first = Frozen.IndexOf("line_rms = 8.0", StringComparison.Ordinal);
        string edited = string.Concat(Frozen.AsSpan(0, first), "line_rms = 9.0", Frozen.AsSpan(first + "line_rms = 8.0".Length));

        FreezeRecord record = CriteriaFile.Parse(edited, "frozen.toml").Frozen!;

        Assert.False(record.IsUnchanged);
        Assert.Equal("[line-noise] reject: [{ line_rms = 8.0, line_ratio = 3.0 }] -> [{ line_rms = 9.0, line_ratio = 3.0 }]", Assert.Single(record.Differences));
    }

    [Fact]
    public void ARecordThatWasChangedWithTheLimitsIsRecognised()
    {
        FreezeRecord record = CriteriaFile.Parse(Frozen.Replace("line_rms = 8.0", "line_rms = 9.0", StringComparison.Ordinal), "frozen.toml").Frozen!;

        Assert.StartsWith("[frozen] was changed itself", Assert.Single(record.Differences), StringComparison.Ordinal);
    }

    [Fact]
    public void AListThatWasNotThereWhenFrozenIsNamed()
    {
        // As of a version that knew no lead-swap: limits and hash of that day, held against today's.
        string text = CriteriaText.Hashed([.. Lab.All.Where(criterion => criterion.Reason is not "lead-swap")]);
        string file = $"[frozen]\ndate = 2026-03-01\nversion = \"0.0.1\"\nsha256 = \"{CriteriaText.Hash([.. Lab.All.Where(criterion => criterion.Reason is not "lead-swap")])}\"\nlimits = '''\n{text}'''\n"
            + "[line-noise]\nreject = [{ line_rms = 8, line_ratio = 3 }]\n";

        Assert.StartsWith("[lead-swap] questionable: not there -> [{ swap_own = 6.0", Assert.Single(CriteriaFile.Parse(file, "frozen.toml").Frozen!.Differences), StringComparison.Ordinal);
    }

    [Fact]
    public void TheFileBeginsWithWhatItIsAndWhatToDoWithIt() => Assert.StartsWith(
        "# Limits of channelaudit 1.0.0, frozen on 2026-03-01: all that were in force, with their sources.\n"
            + $"# SHA-256 of the limits: {Lab.Sha256} (comments and sources do not change it).\n"
            + "# Give this file to --criteria: every audit says whether the limits are still those of that day.\n\n[bridge]\n",
        Frozen,
        StringComparison.Ordinal);

    [Theory]
    [InlineData("date")]
    [InlineData("version")]
    [InlineData("sha256")]
    [InlineData("limits")]
    public void ARecordThatLacksSomethingIsRefused(string key)
    {
        string[] lines = ["date = 2026-03-01", "version = \"1.0.0\"", "sha256 = \"00\"", "limits = \"\""];
        string toml = "[frozen]\n" + string.Join('\n', lines.Where(line => !line.StartsWith(key, StringComparison.Ordinal)));

        Faults.AreExactly(
            $"lab.toml, line 1: [frozen] has no {key}",
            "freeze the limits again with criteria freeze, or take the table out: the limits then count as not frozen",
            () => CriteriaFile.Parse(toml, "lab.toml"));
    }

    [Fact]
    public void FrozenLimitsThatThisVersionCannotReadAreADifference()
    {
        const string toml = "[frozen]\ndate = 2026-03-01\nversion = \"9.0.0\"\nsha256 = \"00\"\nlimits = \"[later]\"\n";

        Assert.Equal(
            "the frozen limits cannot be read by this version: [frozen] limits, line 1: [later] is no reason code with limits",
            CriteriaFile.Parse(toml, "lab.toml").Frozen!.Differences[^1]);
    }

    [Theory]
    [InlineData("[frozen]\ndate = 2026-03-01\n", "[frozen] has no sha256")]
    [InlineData("[frozen]\ndat = 2026-03-01\n", "unknown key 'dat' in [frozen]")]
    [InlineData("frozen = 1\n", "frozen must be a table")]
    public void ARecordThatIsNoneIsRefused(string toml, string found) =>
        Assert.Contains(found, Assert.Throws<ChannelAuditException>(() => CriteriaFile.Parse(toml, "lab.toml")).Message, StringComparison.Ordinal);
}
