using ChannelAudit.Cli.Screening;
using ChannelAudit.Reports.Console;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Demo;

/// <summary>A demo made once by the command, with the product's own engine, and the words of its README.</summary>
public sealed class DemoRun : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder folder = new();

    /// <summary>Where everything was put.</summary>
    public string Folder => folder.In("demo");

    /// <summary>What the demo printed.</summary>
    internal CommandRun Made { get; private set; } = new(-1, string.Empty, string.Empty);

    public async Task InitializeAsync() => Made = await Run("demo", Folder);

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose() => folder.Dispose();

    /// <summary>Runs a command line with the product's engine, without colour and in 100 columns.</summary>
    internal static Task<CommandRun> Run(params string[] words) => CommandRun.With(new AuditEngine(new TerminalStyle()), CancellationToken.None, words);

    /// <summary>Runs a line of the README as if in the demo's folder: what is neither a command's name nor an option is a path there.</summary>
    internal async Task<CommandRun> RunLine(string line)
    {
        string[] words = line.Split(' ');
        Assert.Equal("channelaudit", words[0]);
        int verbs = words[1] is "screen" or "pilot" or "verify" or "reconcile" ? 1 : 2;
        CommandRun run = await Run([.. words.Skip(1).Select((word, i) => i < verbs || word.StartsWith('-') ? word : Path.Combine(Folder, word))]);
        return run with { Output = run.Output.Replace(Folder + Path.DirectorySeparatorChar, string.Empty, StringComparison.Ordinal) };
    }

    /// <summary>The README's blocks in order: the language behind the fence, and the lines.</summary>
    internal IReadOnlyList<(string Language, string[] Lines)> Blocks()
    {
        string[] parts = File.ReadAllText(Path.Combine(Folder, "README.md")).Split("\n```");
        return [.. parts.Where((_, i) => i % 2 == 1).Select(part => part.Split('\n')).Select(lines => (lines[0], lines[1..]))];
    }
}
