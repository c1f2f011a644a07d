using ChannelAudit.Cli.Completion;
using Xunit;

namespace ChannelAudit.Cli.Tests.Completion;

public sealed class ShellScriptTests
{
    public static TheoryData<string> EveryShell => [.. ShellScript.Shells];

    [Theory]
    [MemberData(nameof(EveryShell))]
    public async Task TheScriptAsksTheProgramAndWritesNothingElse(string shell)
    {
        CommandRun run = await CommandRun.Of("completion", shell);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.StartsWith("# Completion of channelaudit in ", run.Output, StringComparison.Ordinal);
        Assert.Contains("channelaudit \"[suggest:", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', run.Output);
    }

    [Fact]
    public async Task AnotherShellIsRefused()
    {
        CommandRun run = await CommandRun.Of("completion", "powershell");

        Assert.Equal("error: SHELL: 'powershell' is not known\nhint: SHELL takes bash, zsh, fish or pwsh\n", run.Error);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Empty(run.Output);
    }

    [SkippableTheory]
    [InlineData("channelaudit sc", "screen", "channelaudit", "sc")]
    [InlineData("channelaudit screen --f", "--fail-on --figures", "channelaudit", "screen", "--f")]
    [InlineData("channelaudit screen --figures ", "all none summary", "channelaudit", "screen", "--figures", "")]
    [InlineData("channelaudit screen --figures=s", "summary", "channelaudit", "screen", "--figures", "=", "s")]
    [InlineData("channelaudit screen --figures=", "all none summary", "channelaudit", "screen", "--figures", "=")]
    [InlineData("./bin/channelaudit cr", "criteria", "./bin/channelaudit", "cr")]
    [InlineData("channelaudit screen ", "", "channelaudit", "screen", "")]
    public void BashCompletesWithIt(string line, string offered, params string[] words)
    {
        string script = $"""
            source <(channelaudit completion bash) || exit
            COMP_LINE='{line}' COMP_POINT={line.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)}
            COMP_WORDS=({string.Join(' ', words.Select(word => $"'{word}'"))})
            COMP_CWORD=$((${"{#COMP_WORDS[@]}"} - 1))
            _channelaudit
            echo "${"{COMPREPLY[*]}"}"

            """;

        CommandRun run = Bash.Run(script, Path.GetTempPath());

        Assert.Equal((0, offered + "\n", string.Empty), (run.Code, run.Output, run.Error));
    }

    [SkippableFact]
    public void BashOffersFilesWhereTheProgramKnowsNothing()
    {
        CommandRun run = Bash.Run("source <(channelaudit completion bash); complete -p channelaudit\n", Path.GetTempPath());

        Assert.Equal("complete -o bashdefault -o default -F _channelaudit channelaudit\n", run.Output);
    }
}
