using ChannelAudit.Impedance;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Reports.Tests.Wording;

public sealed class ImpedanceAdviceTests
{
    [Fact]
    public void WhereTheUnitIsInDoubtNothingIsSaidThatTouchesSkin()
    {
        ImpedanceReport report = Report("cheek\ta-b\t240\ncheek\ta-ground\t230\ncheek\tb-ground\t120\n");

        Assert.Equal(["look at the meter's unit; the table holds kΩ"], ImpedanceAdvice.Of(report).Select(one => one.Advice).ToArray());
        Assert.False(ImpedanceAdvice.TouchesSkin(report));
    }

    [Fact]
    public void OneHighContactIsNamedAlone()
    {
        ImpedanceReport report = Report("cheek\ta-b\t34\ncheek\ta-ground\t41\ncheek\tb-ground\t15\n");

        Assert.Contains(ImpedanceAdvice.Of(report), one => one.Advice.StartsWith("renew electrode C1 (about 30.0 kΩ), wait", StringComparison.Ordinal));
        Assert.DoesNotContain(ImpedanceAdvice.Of(report), one => one.Advice.Contains("ground", StringComparison.Ordinal));
        Assert.True(ImpedanceAdvice.TouchesSkin(report));
    }

    private static ImpedanceReport Report(string rows)
    {
        using TemporaryFolder folder = new();
        StudySetup setup = SetupFile.Parse("[[sites]]\nname = \"cheek\"\nchannel = \"EMG cheek\"\nelectrodes = [\"C1\", \"C2\"]\n", "setup.toml");
        return ImpedanceReport.Of(ImpedanceLog.Read(folder.Write("r.tsv", "site\tpair\tkohm\n" + rows), setup), setup);
    }
}
