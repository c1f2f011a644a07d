using System.CommandLine;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>setup check</c>.</summary>
internal static class SetupCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the technician and the analyst, once a study, before the first participant comes. A setup file
            says which site each channel is, which sites gel can join, and which trials were rest. You get told
            whether yours is in order (how to write one: docs/setup.md).
            """,
        Examples = [new("channelaudit setup check setup.toml", "is the file in order?")],
    };

    private static readonly HelpText CheckHelp = new()
    {
        Purpose =
            """
            For whoever has written or changed a setup file, before the participant arrives. You get the sites
            and their channels, or the line that is wrong and what was probably meant (exit code 2). Whether a
            recording has these channels shows when it is screened.
            """,
        Examples = [new("channelaudit setup check setup.toml", "names the sites, or what is wrong and where")],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var command = new Command("setup", "Checks what was written down about a study's sites and trials.");
        command.Subcommands.Add(Check(context, help));
        help.Add(command, Help);
        return command;
    }

    private static Command Check(CommandContext context, HelpWithExample help)
    {
        var file = new Argument<string>("FILE") { Description = "the setup file" };
        var command = new Command("check", "Checks a setup file and prints its sites.") { file };
        command.SetAction(parse =>
        {
            StudySetup setup = SetupFile.Read(parse.GetRequiredValue(file));
            string sites = setup.Sites.Length == 1 ? "1 site" : FormattableString.Invariant($"{setup.Sites.Length} sites");
            context.Output.Write($"{setup.FileName}: in order; {sites}\n");
            foreach (SiteSetup site in setup.Sites)
            {
                context.Output.Write($"  {site.Name}: channel '{site.Channel}'\n");
            }

            return ExitCode.Done;
        });
        help.Add(command, CheckHelp);
        return command;
    }
}
