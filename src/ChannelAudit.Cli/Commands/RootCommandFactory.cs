using System.CommandLine;
using System.CommandLine.Help;

namespace ChannelAudit.Cli.Commands;

/// <summary>Builds the whole command line.</summary>
internal static class RootCommandFactory
{
    /// <summary>The name of the option that logs everything.</summary>
    public const string Verbose = "--verbose";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the technician while the participant is still in the chair, the analyst before scoring, and
            the reviewer months later. You get a verdict for every channel and trial, with the reason, the
            number and its limit, and pictures that show where. It judges recordings, not people: it is not a
            medical device.
            """,
        Notes =
            """
            Exit codes: 0 done; 1 --fail-on was reached, or compare, verify or reconcile found a difference; 2
            wrong usage, setup, criteria, events or lists; 3 a recording could not be read (the others are still
            audited); 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit demo my-demo", "a made study with known faults, to see what it is all about"),
            new("channelaudit screen study/ --setup setup.toml", "all recordings of a folder, into the folder audit"),
            new("channelaudit screen --help", "what a command can do"),
        ],
    };

    /// <summary>The commands that the context can serve.</summary>
    public static Command Create(CommandContext context)
    {
        // No RootCommand: it is named after the running process, which in a test is another one.
        var root = new Command("channelaudit", "Audits facial-EMG recordings: can each channel and trial be scored, and if not, why.");
        var help = new HelpWithExample();
        root.Options.Add(new HelpOption("--help", "-h") { Description = "show this help", Action = help, Recursive = true });
        root.Options.Add(new Option<bool>("--version")
        {
            Description = "show the version",
            Arity = ArgumentArity.Zero,
            Action = new ShowVersion(),
        });
        root.Options.Add(new Option<bool>(Verbose)
        {
            Description = "log every step to standard error",
            Arity = ArgumentArity.Zero,
            Recursive = true,
        });
        if (context.Engine is { } engine)
        {
            root.Subcommands.Add(ScreenCommand.Create(context, engine, help));
            root.Subcommands.Add(PilotCommand.Create(context, help));
            root.Subcommands.Add(DemoCommand.Create(context, engine, help));
            root.Subcommands.Add(DetectabilityCommand.Create(context, help));
        }

        root.Subcommands.Add(MergeCommand.Create(context, help));
        root.Subcommands.Add(DecideCommand.Create(context, help));
        root.Subcommands.Add(ReviewCommand.Create(context, help));
        root.Subcommands.Add(CompareCommand.Create(context, help));
        root.Subcommands.Add(ReconcileCommand.Create(context, help));
        root.Subcommands.Add(RatersCommand.Create(context, help));
        root.Subcommands.Add(TrendCommand.Create(context, help));
        root.Subcommands.Add(VerifyCommand.Create(context, help));
        root.Subcommands.Add(ExportCommand.Create(context, help));
        root.Subcommands.Add(ImpedanceCommand.Create(context, help));
        root.Subcommands.Add(CriteriaCommand.Create(context, help));
        root.Subcommands.Add(SetupCommand.Create(context, help));
        root.Subcommands.Add(ExplainCommand.Create(context, help));
        root.Subcommands.Add(CompletionCommand.Create(context, help));
        help.Add(root, Help);
        return root;
    }
}
