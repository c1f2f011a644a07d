using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>criteria show</c> and <c>criteria check</c>.</summary>
internal static class CriteriaCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst, before anyone looks at the data: see the limits, change what the study needs, and
            freeze them. For the reviewer, later: which limits were in force. You get them as a file to keep.
            """,
        Examples =
        [
            new("channelaudit criteria show > lab.toml", "all limits in a file, to change some of them"),
            new("channelaudit criteria check lab.toml", "what that file changes"),
            new("channelaudit criteria freeze lab.toml --out frozen.toml", "all limits in a dated file, before the data are looked at"),
        ],
    };

    private static readonly HelpText ShowHelp = new()
    {
        Purpose =
            """
            For whoever asks where a verdict's limit comes from. You get every limit with its source, on
            standard output, in the form of a criteria file: keep it, give it to --criteria, and the same
            verdicts come out again.
            """,
        Examples =
        [
            new("channelaudit criteria show", "the limits that hold when nothing else is said"),
            new("channelaudit criteria show --criteria lab.toml > in-force.toml", "a lab's limits with all others, in one file to keep"),
        ],
    };

    private static readonly HelpText CheckHelp = new()
    {
        Purpose =
            """
            For the analyst who has written limits of a study's own, before the first recording is screened
            with them. You get each list of limits that differs, old and new, or the line that is wrong (exit
            code 2).
            """,
        Examples = [new("channelaudit criteria check lab.toml", "is the file in order, and what does it change?")],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var command = new Command("criteria", "Shows, checks, freezes and compares the limits that verdicts are made by.");
        command.Subcommands.Add(Show(context, help));
        command.Subcommands.Add(Check(context, help));
        command.Subcommands.Add(CriteriaFreezeCommand.Create(context, help));
        command.Subcommands.Add(CriteriaCompareCommand.Create(context, help));
        help.Add(command, Help);
        return command;
    }

    private static Command Show(CommandContext context, HelpWithExample help)
    {
        var file = new Option<string>("--criteria") { HelpName = "FILE", Description = "limits that differ from the defaults" };
        var command = new Command("show", "Prints all limits in force with their sources, as a criteria file.") { file };
        command.SetAction(parse =>
        {
            string? path = parse.GetValue(file);
            AuditCriteria criteria = path is null ? DefaultCriteria.All : CriteriaFile.Read(path);
            string from = criteria.FileName is null ? "the defaults" : $"{criteria.FileName} over the defaults";
            context.Output.Write($"# Limits in force in channelaudit {ProductVersion.Text}: {from}.\n");
            context.Output.Write($"# SHA-256 of the limits: {criteria.Sha256}\n\n");
            context.Output.Write(CriteriaText.Canonical(criteria));
            return ExitCode.Done;
        });
        help.Add(command, ShowHelp);
        return command;
    }

    private static Command Check(CommandContext context, HelpWithExample help)
    {
        var file = new Argument<string>("FILE") { Description = "the criteria file" };
        var command = new Command("check", "Checks a criteria file and prints what it changes.") { file };
        command.SetAction(parse =>
        {
            AuditCriteria criteria = CriteriaFile.Read(parse.GetRequiredValue(file));
            ImmutableArray<string> lines = CriteriaDifferences.Lines(DefaultCriteria.All, criteria);
            context.Output.Write($"{criteria.FileName}: in order; {Count(lines.Length)} the defaults\n");
            foreach (string line in lines)
            {
                context.Output.Write($"  {line}\n");
            }

            context.Output.Write($"SHA-256 of the limits: {criteria.Sha256}\n");
            WriteFreeze(context.Output, criteria);
            return ExitCode.Done;
        });
        help.Add(command, CheckHelp);
        return command;
    }

    private static void WriteFreeze(TextWriter output, AuditCriteria criteria)
    {
        if (criteria.Frozen is not { } frozen)
        {
            return;
        }

        output.Write(FreezeWords.Of(criteria) + "\n");
        foreach (string difference in frozen.Differences)
        {
            output.Write($"  {difference}\n");
        }
    }

    private static string Count(int lists) => lists switch
    {
        0 => "nothing differs from",
        1 => "1 list of limits differs from",
        _ => FormattableString.Invariant($"{lists} lists of limits differ from"),
    };
}
