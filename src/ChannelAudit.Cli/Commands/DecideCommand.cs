using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Deciding;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>decide</c>: a person's verdict over the computed one, kept in the audit's ledger.</summary>
internal static class DecideCommand
{
    private const string Origin = "decide";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For whoever looks at what the rules found, and knows better for a channel, a trial, or a trial in a
            channel. You get your verdict as the final one in every table and page, beside the computed one,
            which stays; with your name, the time and your reason in decisions.jsonl, where lines are only ever
            added. No recording is needed. DIR alone lists what was decided and what became of it.
            """,
        Notes =
            """
            Exit codes: 0 done; 2 wrong usage, no such channel or trial, a ledger that was changed, or tables
            that could not be brought up to date (the decision is kept then, and said to be); 130
            interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit decide audit", "what was decided so far"),
            new("channelaudit decide audit --recording K18 --channel brow --verdict pass --reason TEXT --by NAME", "a channel can be scored after all; its trials keep their own verdicts"),
            new("channelaudit decide audit --recording K03 --trial 7 --verdict reject --reason TEXT --by NAME", "a trial, in all channels"),
            new("channelaudit decide audit --withdraw 2 --reason TEXT --by NAME", "take a decision back; its line stays"),
            new("channelaudit decide audit --from decisions.tsv --by NAME", "many at once"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        DecideOptions options = new();
        Command command = new("decide", "Gives your verdict over a computed one, with a reason, a name and the time.")
        {
            options.Folder, options.Recording, options.Channel, options.Trial, options.Verdict, options.Reason, options.By, options.Withdraw, options.From,
        };
        command.SetAction((parse, cancel) => Task.FromResult(Run(options, parse, context, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(DecideOptions options, ParseResult parse, CommandContext context, CancellationToken cancel)
    {
        string folder = parse.GetRequiredValue(options.Folder);
        if (options.OnlyLists(parse))
        {
            return List(folder, context, cancel);
        }

        ImmutableArray<Decision> lines = Decide(options, parse, folder, context.Clock, cancel);
        context.Output.Write(LedgerList.Acknowledge(lines, context.Style));

        try
        {
            AuditUpdate.Run(folder, ProductVersion.Text, cancel);
        }
        catch (ChannelAuditException fault)
        {
            throw UsageErrors.KeptButNotShown(lines.Length, fault);
        }

        context.Output.Write($"Tables and pages in {OneLine.Of(folder)} are up to date.\n");
        return ExitCode.Done;
    }

    // A decision that another program added, or one whose run was broken off, is shown in tables and pages from now on.
    private static int List(string folder, CommandContext context, CancellationToken cancel)
    {
        StoredAudit audit = StoredAudit.Open(folder);
        context.Output.Write(LedgerList.Render(audit, context.Style));
        if (audit.Decisions.Mark != audit.Decided && AuditUpdate.Run(folder, ProductVersion.Text, cancel))
        {
            context.Output.Write($"Tables and pages in {OneLine.Of(folder)} were behind, and are up to date now.\n");
        }

        return ExitCode.Done;
    }

    private static ImmutableArray<Decision> Decide(DecideOptions options, ParseResult parse, string folder, TimeProvider clock, CancellationToken cancel)
    {
        if (options.Withdrawal(parse) is { } withdrawal)
        {
            DecisionDesk.Open(folder, ProductVersion.Text);
            return [LedgerWriter.Withdraw(folder, withdrawal.Number, withdrawal.By, withdrawal.Reason, Origin, clock, cancel)];
        }

        ImmutableArray<DecisionRequest> requests = options.Requests(parse);
        return DecisionDesk.Decide(DecisionDesk.Open(folder, ProductVersion.Text), requests, Origin, blind: false, clock, cancel);
    }
}
