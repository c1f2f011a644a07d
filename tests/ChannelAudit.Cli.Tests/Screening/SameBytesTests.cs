using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Screening;

/// <summary>The built program on the same recording with one thread, with two, and on processors that lack wide registers.</summary>
public sealed class SameBytesTests
{
    [SkippableFact]
    public void NeitherThreadsNorTheProcessorChangeAByte()
    {
        using TemporaryFolder folder = new();
        const string Script = """
            set -e
            channelaudit demo demo >made.txt
            one=$(find demo -name '*.edf' | sort | head -n 1)
            try() { out=$1; shift; env "$@" channelaudit screen "$one" --setup demo/study/setup.toml --figures none --out "$out" --jobs "$jobs" >"$out.txt"; }
            jobs=2 try two A=1
            jobs=1 try one A=1
            jobs=1 try narrow DOTNET_EnableAVX2=0
            jobs=2 try plain DOTNET_EnableHWIntrinsic=0
            for other in one narrow plain; do diff -r two "$other"; done
            wc -l <two/verdicts.tsv
            """;

        CommandRun run = Bash.Run(Script, folder.Folder);

        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.InRange(int.Parse(run.Output, System.Globalization.CultureInfo.InvariantCulture), 2, 10_000);
    }
}
