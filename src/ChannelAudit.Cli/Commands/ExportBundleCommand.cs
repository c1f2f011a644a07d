using System.CommandLine;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Cli.Verifying;
using ChannelAudit.Excerpts;
using ChannelAudit.Reports.Bundles;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Runs;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>export bundle</c>.</summary>
internal static class ExportBundleCommand
{
    private const string Name = "channelaudit export bundle";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst whose reviewer shall check every exclusion without the recordings. You get one file:
            tables, results, decisions, criteria and setup of the audit, and for each trial of a channel that is
            left out the samples of its window. channelaudit verify opens it and measures again. No field of a
            file's header about a person, place or device and no path of this machine is in it. What people
            wrote themselves is: look through setup, criteria, labels and decisions before you pass it on.
            """,
        Examples =
        [
            new("channelaudit export bundle study-audit --data study/ --to evidence.zip", "everything that a reviewer needs"),
            new("channelaudit export bundle study-audit --data study/ --to all.zip --questionable", "with the samples of questionable trials too"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string> audit = new("DIR") { Description = "the folder of an audit" };
        Option<string> data = new("--data") { HelpName = "ROOT", Description = "where its recordings are: the folder that screen was given, or one above it" };
        Option<string> to = new("--to") { HelpName = "FILE.zip", Description = "the file to write, which must not be there yet" };
        Option<bool> questionable = new("--questionable") { Description = "also the samples of what is questionable" };
        Command command = new("bundle", "Writes the evidence for every exclusion into one file.") { audit, data, to, questionable };
        command.SetAction((parse, cancel) => Task.FromResult(Run(
            parse.GetRequiredValue(audit),
            parse.GetValue(data) ?? throw UsageErrors.OptionMissing(Name, data),
            parse.GetValue(to) ?? throw UsageErrors.OptionMissing(Name, to),
            parse.GetValue(questionable) ? Grade.Questionable : Grade.Reject,
            context.Output,
            cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string folder, string data, string to, Grade least, TextWriter output, CancellationToken cancel)
    {
        if (!Path.Exists(data))
        {
            throw VerifyErrors.NoData(data);
        }

        NewFile.Check(to, FileOption.To);
        RecordedRun run = RecordedRun.Read(folder);
        RequireDecided(folder);
        FoundData found = FoundData.Below(data, run);
        if (found.Missing.Concat(found.Changed).FirstOrDefault() is { } fault)
        {
            throw BundleErrors.NotAsAudited(found.Missing.Length > 0 ? $"{OneLine.Of(fault)} is not below {OneLine.Of(data)}" : fault);
        }

        using ScratchFolder scratch = ScratchFolder.Outside(folder, data);
        ScreenInputs inputs = new Remake(run, scratch).ReadInputs();
        using BundleWriter writer = new(to);
        BundleExport export = new(run, writer, least);
        export.AddAudit();
        RequireDecided(folder);
        foreach (StoredRecording recording in run.Audit.Recordings)
        {
            RecordingEntry entry = found.Entries.Single(one => string.Equals(one.Id, recording.Id, StringComparison.Ordinal));
            export.AddRecording(recording, () => ExcerptSource.Open(entry, inputs.Setup, inputs.EventsFile, cancel), cancel);
        }

        export.Complete();
        string recordings = Quantities.Many(run.Audit.Recordings.Length, "recording");
        output.Write($"Written to {OneLine.Of(to)}: {recordings}, {Quantities.Many(export.Exclusions, "exclusion")}, {(least == Grade.Questionable ? $"{export.Questionable.Plain()} questionable, " : string.Empty)}{Quantities.Many(writer.Entries.Length, "file")}\n");
        if (export.Omitted > 0)
        {
            output.Write($"Without the samples of {Quantities.Many(export.Omitted, "trial")} of a channel: too long a window, or too high or low a rate; verify calls them not checkable\n");
        }

        return ExitCode.Done;
    }

    // Evidence under broken decisions would prove nothing, and tables that are behind them would not come out again. Asked once more when the files are taken: a review may go on meanwhile.
    private static void RequireDecided(string folder)
    {
        StoredAudit audit = StoredAudit.Open(folder);
        if (audit.Decisions.Mark != audit.Decided)
        {
            throw BundleErrors.Behind(folder);
        }
    }
}
