using System.CommandLine;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>export</c>: one file a command below it.</summary>
internal static class ExportCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst whose next program, archive or colleague expects another form than that of an audit.
            You get the verdicts of a finished audit in that form; the audit stays as it is.
            """,
        Examples = [new("channelaudit export bids study-audit --to study/derivatives/channelaudit", "as a derivative of a BIDS data set")],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Command command = new("export", "Writes the verdicts of an audit in the form of an open standard.");
        command.Subcommands.Add(ExportBidsCommand.Create(context, help));
        help.Add(command, Help);
        return command;
    }
}
