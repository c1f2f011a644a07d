using System.CommandLine;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>setup</c>: one file a command below it.</summary>
internal static class SetupCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the technician and the analyst, once a study, before the first participant comes. A setup file
            says which site each channel is, which sites gel can join, and which trials were rest. You get one
            to complete, and are told whether yours is in order (every key: docs/setup.md).
            """,
        Examples =
        [
            new("channelaudit setup new P07.edf", "a setup.toml to complete, from the labels in a recording"),
            new("channelaudit setup check setup.toml P07.edf", "is the file in order, and does it fit the recording?"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var command = new Command("setup", "Starts and checks what is written down about a study's sites and trials.");
        command.Subcommands.Add(SetupNewCommand.Create(context, help));
        command.Subcommands.Add(SetupCheckCommand.Create(context, help));
        help.Add(command, Help);
        return command;
    }
}
