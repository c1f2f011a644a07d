using System.CommandLine;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Runs;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>demo</c>: makes a recording with known faults and screens it, so that there is something to look at.</summary>
internal static class DemoCommand
{
    private const string Example =
        """
        Example:
          channelaudit demo my-demo

        Leaves my-demo/recording (a made session of an invented study: no person was recorded) and
        my-demo/audit (tables, report.html and a picture). The same bytes on every run.

        """;

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, IScreenEngine engine, HelpWithExample help)
    {
        Argument<string> folder = new("DIR") { Description = "a new or empty folder, or that of an earlier demo" };
        Command command = new("demo", "Makes a recording with known faults and screens it.") { folder };
        command.SetAction((parse, cancel) => Task.FromResult(Run(parse.GetRequiredValue(folder), context, engine, cancel)));
        help.Add(command, Example);
        return command;
    }

    private static int Run(string folder, CommandContext context, IScreenEngine engine, CancellationToken cancel)
    {
        string audit = Path.Combine(folder, "audit");
        if (File.Exists(folder) || (Directory.Exists(folder) && !OutputFolder.IsAudit(audit) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            throw UsageErrors.NotForDemo(folder);
        }

        string made = Path.Combine(folder, "recording");
        Directory.CreateDirectory(made);
        DemoSession.Write(made);
        ScreenRequest request = new()
        {
            Paths = [Path.Combine(made, "session.edf")],
            SetupFile = Path.Combine(made, "setup.toml"),
            OutFolder = audit,
        };
        return new ScreenRunner(engine, context.Log, context.Error).Run(request, context.Output, cancel);
    }
}
