using System.CommandLine;
using System.CommandLine.Help;

namespace ChannelAudit.Cli.Commands;

/// <summary>Builds the whole command line.</summary>
internal static class RootCommandFactory
{
    /// <summary>The name of the option that logs everything.</summary>
    public const string Verbose = "--verbose";

    private const string Example =
        """
        Example:
          channelaudit screen study/ --setup setup.toml
          channelaudit screen --help

        Exit codes: 0 done; 1 --fail-on was reached; 2 wrong usage, setup, criteria or events;
        3 a recording could not be read (the others are still audited); 130 interrupted; 70 our bug.

        """;

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
            root.Subcommands.Add(DemoCommand.Create(context, engine, help));
        }

        root.Subcommands.Add(CriteriaCommand.Create(context, help));
        root.Subcommands.Add(SetupCommand.Create(context, help));
        help.Add(root, Example);
        return root;
    }
}
