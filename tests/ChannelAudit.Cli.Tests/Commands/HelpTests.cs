using System.CommandLine;
using System.Text.RegularExpressions;
using ChannelAudit.Cli.Commands;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

public sealed partial class HelpTests
{
    private const int Width = 100;

    public static TheoryData<string> EveryCommand => [.. CommandTree.Paths().Select(path => string.Join(' ', path))];

    [Fact]
    public void CommandsAreAllOfThem() => Assert.Superset(
        new HashSet<string>(
            [
                "", "screen", "pilot", "demo", "impedance", "criteria", "criteria show", "criteria check", "criteria freeze", "criteria compare", "setup", "setup new", "setup check", "completion", "review", "compare", "reconcile", "raters", "trend", "verify", "export", "export bids", "export bundle", "decide", "detectability",
            ],
            StringComparer.Ordinal),
        new HashSet<string>(CommandTree.Paths().Select(path => string.Join(' ', path)), StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(EveryCommand))]
    public async Task HelpIsAsKept(string command)
    {
        CommandRun run = await Help(command);

        Golden.Match($"ChannelAudit.Cli.Tests/Golden/{string.Join('-', command.Split(' ').Prepend("help").Where(word => word.Length > 0))}.txt", run.Output);
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
    }

    [Theory]
    [MemberData(nameof(EveryCommand))]
    public async Task HelpStartsWithWhatTheCommandIsForAndFitsTheScreen(string command)
    {
        string[] parts = (await Help(command)).Output.Split("\n\n");

        // What it does in a sentence; for whom, when and what comes out of it; then usage and options.
        Assert.Matches("^[A-Z][^\n]*\\.$", parts[0]);
        Assert.StartsWith("For ", parts[1], StringComparison.Ordinal);
        Assert.Contains("You get", parts[1].Replace('\n', ' '), StringComparison.Ordinal);
        Assert.StartsWith("Usage:\n  channelaudit", parts[2], StringComparison.Ordinal);
        Assert.All(string.Join("\n\n", parts).Split('\n'), line => Assert.InRange(line.Length, 0, Width));
    }

    [Theory]
    [MemberData(nameof(EveryCommand))]
    public async Task HelpEndsWithExamplesThatAreUnderstood(string command)
    {
        string output = (await Help(command)).Output;
        string[] examples = output[(output.LastIndexOf("\n\nExamples:\n", StringComparison.Ordinal) + "\n\nExamples:\n".Length)..].TrimEnd('\n').Split('\n');
        using var context = new CommandContext(TextWriter.Null, TextWriter.Null, new RecordedEngine());
        Command root = RootCommandFactory.Create(context);

        Assert.Contains("\n\nExamples:\n", output, StringComparison.Ordinal);
        Assert.Equal(0, examples.Length % 2);
        foreach (string[] example in examples.Chunk(2))
        {
            string line = Redirected().Replace(example[0].Trim(), string.Empty);
            string[] words = [.. line.Split(' ').Skip(1)];

            Assert.StartsWith($"  channelaudit {command}".TrimEnd(), example[0], StringComparison.Ordinal);
            Assert.Matches("^ {6}[a-zA-Z].{2,}$", example[1]);
            UsageCheck.Refuse(root.Parse(words, CommandLine.Parsing), words);
        }
    }

    [Theory]
    [InlineData("-h")]
    [InlineData("--help")]
    public async Task HelpIsShownWhateverElseIsWrong(string help)
    {
        CommandRun run = await CommandRun.Of("screen", "--bogus", help);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.StartsWith("Says for every channel", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task VersionIsNameAndNumber()
    {
        CommandRun run = await CommandRun.Of("--version");

        Assert.Equal("channelaudit 0.1.0\n", run.Output);
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
    }

    private static Task<CommandRun> Help(string command) =>
        CommandRun.Of([.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);

    [GeneratedRegex(" >>? .*$", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Redirected();
}
