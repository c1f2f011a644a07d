using ChannelAudit.Reports.Stored;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary>What a command that reads an audit tells of its ledger of decisions.</summary>
internal static class LedgerWarnings
{
    /// <summary>Logs that a line was broken off, and that tables and pages are behind.</summary>
    public static void Tell(CommandContext context, StoredAudit audit)
    {
        if (audit.Decisions.Torn is { } torn)
        {
            context.Log.Warning("{Folder:l}/{File:l}, {Place:l}: {Message:l}", OneLine.Of(audit.Folder), torn.File, torn.Place, torn.Message);
        }

        if (audit.Decisions.Mark != audit.Decided)
        {
            context.Log.Warning("{Folder:l}: decisions were added since its tables and pages were made; channelaudit decide {Same:l} brings them up to date", OneLine.Of(audit.Folder), OneLine.Of(audit.Folder));
        }
    }
}
