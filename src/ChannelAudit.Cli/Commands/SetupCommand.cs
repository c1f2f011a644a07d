using System.CommandLine;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>setup check</c>.</summary>
internal static class SetupCommand
{
    private const string Example =
        """
        Example:
          channelaudit setup check setup.toml

        """;

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var command = new Command("setup", "Checks what was written down about a study's sites and trials.");
        command.Subcommands.Add(Check(context, help));
        help.Add(command, Example);
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
        help.Add(command, Example);
        return command;
    }
}
