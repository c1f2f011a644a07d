using System.CommandLine;
using ChannelAudit.Cli.Screening;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>screen</c>: recordings, or folders of them, to verdicts.</summary>
internal static class ScreenCommand
{
    private const string Example =
        """
        Example:
          channelaudit screen P07.edf
          channelaudit screen study/ --setup setup.toml --out study-audit --fail-on reject

        Start with DIR/report.html. Exit codes: 0 done; 1 --fail-on was reached; 2 wrong usage, setup,
        criteria or events; 3 a recording could not be read (the others are still audited); 130 interrupted.

        """;

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, IScreenEngine engine, HelpWithExample help)
    {
        var options = new ScreenOptions();
        var command = new Command("screen", "Says for every channel and trial of recordings: pass, questionable or reject, and why.")
        {
            options.Paths, options.Setup, options.Criteria, options.Events, options.Out, options.Figures, options.FailOn,
        };
        command.SetAction((parse, cancel) =>
        {
            var runner = new ScreenRunner(engine, context.Log, context.Error);
            return Task.FromResult(runner.Run(options.Request(parse), context.Output, cancel));
        });
        help.Add(command, Example);
        return command;
    }
}
