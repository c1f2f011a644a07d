using System.CommandLine;
using ChannelAudit.Cli.Screening;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>screen</c>: recordings, or folders of them, to verdicts.</summary>
internal static class ScreenCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst before scoring, and for whoever has just made a recording and asks whether it
            will do. You get the verdicts here, worst first, and in DIR a report for the browser (report.html:
            start there), tables that load in R and Python, and pictures. Recordings are never changed.
            """,
        Notes =
            """
            Exit codes: 0 done; 1 --fail-on was reached; 2 wrong usage, setup, criteria, events or readings;
            3 a recording could not be read (the others are still audited); 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit screen P07.edf", "one recording, into the folder audit, with all pictures"),
            new("channelaudit screen study/ --setup setup.toml --out study-audit", "all recordings of a folder, with sites and trials as written down"),
            new("channelaudit screen study/ --figures none --fail-on reject", "for a script: no pictures, and exit code 1 when anything is rejected"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, IScreenEngine engine, HelpWithExample help)
    {
        var options = new ScreenOptions();
        var command = new Command("screen", "Says for every channel and trial of recordings: pass, questionable or reject, and why.")
        {
            options.Paths, options.List, options.Setup, options.Criteria, options.Events, options.Impedance, options.Out, options.Jobs, options.Figures, options.FailOn, options.Shard, options.Parquet,
        };
        command.SetAction((parse, cancel) =>
        {
            var runner = new ScreenRunner(engine, context.Log, context.Error, context.ProgressColumns);
            return Task.FromResult(runner.Run(options.Request(parse), context.Output, cancel));
        });
        help.Add(command, Help);
        return command;
    }
}
