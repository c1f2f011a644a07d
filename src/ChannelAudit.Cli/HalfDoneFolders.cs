using System.CommandLine;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Reports.Output;
using ChannelAudit.Text;

namespace ChannelAudit.Cli;

/// <summary>Completes, before a command does anything else, what an earlier run has left half done in a folder that the command line names.</summary>
internal static class HalfDoneFolders
{
    /// <summary>Completes them, and says so.</summary>
    /// <param name="parse">The command line; any of its words may be a folder.</param>
    /// <param name="context">For the log.</param>
    /// <param name="cancel">Ends the wait for a run that is still at it.</param>
    /// <exception cref="ChannelAuditException">When that is not possible.</exception>
    public static void Complete(ParseResult parse, CommandContext context, CancellationToken cancel)
    {
        IEnumerable<string?> given = parse.CommandResult.Command.Options.OfType<Option<string>>().Select(parse.GetValue);
        foreach (string folder in parse.Tokens.Select(token => token.Value).Concat(given.OfType<string>()).Distinct(StringComparer.Ordinal).Where(CommitJournal.IsIn))
        {
            if (CommitJournal.Complete(folder, cancel))
            {
                context.Log.Warning("{Folder:l}: an earlier run was ended while it put its files in place: completed now, nothing is lost", OneLine.Of(folder));
            }
        }
    }
}
