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
        Examples =
        [
            new("channelaudit export bids study-audit --to study/derivatives/channelaudit", "as a derivative of a BIDS data set"),
            new("channelaudit export bundle study-audit --data study/ --to evidence.zip", "the evidence for every exclusion, in one file"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Command command = new("export", "Writes an audit in another form: an open standard, or one file of evidence.");
        command.Subcommands.Add(ExportBidsCommand.Create(context, help));
        command.Subcommands.Add(ExportBundleCommand.Create(context, help));
        help.Add(command, Help);
        return command;
    }
}
