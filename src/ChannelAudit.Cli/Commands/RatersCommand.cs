using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Cli.Rating;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Raters;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>raters</c>: people's labels against the criteria and each other.</summary>
internal static class RatersCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the reviewer, or a lab that sets its own limits, with labels that people gave to trials or
            channels, best without seeing conditions and verdicts. You get how far the criteria agree with each
            person and people with each other, what reject finds and misses, and each measure's own curve with
            the limit in force beside the one that would agree best.
            """,
        Notes =
            """
            LABELS is a table with tabs, commas or semicolons (docs/raters.md):
              recording  channel  trial  rater  label
              K07        cheek    12     A      reject
              K07        cheek    12     B      pass
            Labels: pass (good, ok), questionable (unsure) or reject (bad). n/a as trial: the whole channel.
            --blind adds the decisions of the audit that were made without seeing the computed verdict.

            A limit chosen on labels looks better on them than it is: judge it on other recordings.

            Exit codes: 0 done, whatever agrees; 2 wrong usage, labels or audit; 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit raters audit labels.tsv", "agreement, sensitivity, and limits against labels"),
            new("channelaudit raters audit labels.tsv --out agreement", "with tables and a picture of the curves, in a new folder"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string> folder = new("DIR") { Description = "the folder of an audit" };
        Argument<string?> labels = new("LABELS")
        {
            Description = "a table of people's labels: recording, channel, trial, rater, label; may be left out with --blind",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> blind = new("--blind") { Description = "take blind decisions of the audit for labels, too", Arity = ArgumentArity.Zero };
        Option<string> place = new("--out") { HelpName = "FOLDER", Description = "also write tables and a picture, into a new or empty folder" };
        Command command = new("raters", "Holds people's labels against the criteria and each other.") { folder, labels, blind, place };
        command.SetAction((parse, cancel) => Task.FromResult(
            Run(parse.GetRequiredValue(folder), parse.GetValue(labels), parse.GetValue(blind), parse.GetValue(place), context, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string folder, string? file, bool withBlind, string? place, CommandContext context, CancellationToken cancel)
    {
        if (file is null && !withBlind)
        {
            throw UsageErrors.NoLabels();
        }

        StoredAudit audit = StoredAudit.Open(folder);
        LedgerWarnings.Tell(context, audit);

        // Every source of labels joins here: whatever gives a place, a rater and a grade.
        BlindDecisions? blind = withBlind ? BlindDecisions.Of(audit) : null;
        ImmutableArray<GivenLabel> labels = [.. file is null ? [] : LabelList.Read(file), .. blind?.Labels ?? []];
        string source = string.Join(" and ", new[] { file is null ? null : Path.GetFileName(file), withBlind ? "blind decisions" : null }.OfType<string>());
        RaterFolder? tables = place is null ? null : new RaterFolder(place);
        RaterStudy study = RaterStudy.Of(audit, labels, cancel);
        if (study.Sets.IsEmpty)
        {
            if (labels.IsEmpty && file is null)
            {
                throw UsageErrors.NoBlindDecision(folder);
            }

            throw UsageErrors.NoLabelFits(source, study.Unmatched.IsEmpty ? null : study.Unmatched[0].Cause);
        }

        tables?.Write(study);
        context.Output.Write(RatersText.Render(study, source));
        context.Output.Write(blind is { Stale: > 0 } ? $"\n{Quantities.Many(blind.Stale, "blind decision")} left out: about data that are others now (channelaudit decide {OneLine.Of(folder)} lists them).\n" : string.Empty);
        context.Output.Write(place is null ? string.Empty : $"\nWritten to {place}: {string.Join(", ", tables!.Written)}\n");
        return ExitCode.Done;
    }
}
