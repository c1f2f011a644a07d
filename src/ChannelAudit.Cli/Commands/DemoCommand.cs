using System.CommandLine;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Runs;
using ChannelAudit.Synthesis.Demo;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>demo</c>: makes a study with known faults and screens it, so that there is something to look at.</summary>
internal static class DemoCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For everyone, on the first day: something to look at without a recording of your own. You get
            DIR/study (six made sessions of an invented study: no person was recorded), DIR/audit (tables,
            report.html and pictures) and DIR/README.md, which leads a technician, an analyst and a reviewer
            through both. The same bytes on every run.
            """,
        Examples = [new("channelaudit demo my-demo", "makes and screens it in a few seconds; then open my-demo/README.md")],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, IScreenEngine engine, HelpWithExample help)
    {
        Argument<string> folder = new("DIR") { Description = "a new or empty folder, or that of an earlier demo" };
        Command command = new("demo", "Makes a study with known faults and screens it.") { folder };
        command.SetAction((parse, cancel) => Task.FromResult(Run(parse.GetRequiredValue(folder), context, engine, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string folder, CommandContext context, IScreenEngine engine, CancellationToken cancel)
    {
        string audit = Path.Combine(folder, "audit");
        if (File.Exists(folder) || (Directory.Exists(folder) && !OutputFolder.IsAudit(audit) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            throw UsageErrors.NotForDemo(folder);
        }

        DemoFolder.Write(folder);
        string study = Path.Combine(folder, DemoFolder.Study);
        ScreenRequest request = new()
        {
            Paths = [study],
            SetupFile = Path.Combine(study, DemoText.Setup),
            OutFolder = audit,
        };
        return new ScreenRunner(engine, context.Log, context.Error).Run(request, context.Output, cancel);
    }
}
