using ChannelAudit.Findings;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

public sealed class ExplainCommandTests
{
    public static TheoryData<string> EveryCode => [.. ReasonCode.All];

    [Fact]
    public async Task WithoutCodeAllReasonsAreListed()
    {
        CommandRun run = await CommandRun.Of("explain");

        Golden.Match("ChannelAudit.Cli.Tests/Golden/explain.txt", run.Output);
        Assert.All(ReasonCode.All, code => Assert.Contains($"\n  {code} ", run.Output, StringComparison.Ordinal));
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
    }

    [Fact]
    public async Task APageIsPlainTextWithTheCautionAtItsEnd()
    {
        CommandRun run = await CommandRun.Of("explain", "clipping");

        Golden.Match("ChannelAudit.Cli.Tests/Golden/explain-clipping.txt", run.Output);
    }

    [Theory]
    [MemberData(nameof(EveryCode))]
    public async Task EveryReasonIsExplainedOnAHundredColumns(string code)
    {
        CommandRun run = await CommandRun.Of("explain", code);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Contains(code, run.Output.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("What to do", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("](", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('`', run.Output);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }
}
