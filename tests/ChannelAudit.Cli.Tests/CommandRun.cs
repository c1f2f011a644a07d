using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Screening;

namespace ChannelAudit.Cli.Tests;

/// <summary>What a command line left behind.</summary>
/// <param name="Code">The exit code.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Error">Standard error.</param>
internal sealed record CommandRun(int Code, string Output, string Error)
{
    /// <summary>Runs a command line in this process.</summary>
    public static Task<CommandRun> Of(params string[] arguments) => With(new RecordedEngine(), CancellationToken.None, arguments);

    /// <summary>Runs a command line with an engine.</summary>
    public static async Task<CommandRun> With(IScreenEngine? engine, CancellationToken cancel, params string[] arguments)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var context = new CommandContext(output, error, engine);
        int code = await CommandLine.RunAsync(arguments, context, cancel);
        return new CommandRun(code, output.ToString(), error.ToString());
    }
}
