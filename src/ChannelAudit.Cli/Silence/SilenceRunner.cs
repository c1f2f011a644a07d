using System.Text;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Criteria;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Deciding;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Silence;

/// <summary>Runs <c>detectability</c>: plants, audits, counts, writes.</summary>
internal static class SilenceRunner
{
    /// <summary>Runs the request.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="context">Where to write.</param>
    /// <param name="cancel">Ends it; no file has changed then.</param>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When the request cannot be met.</exception>
    public static int Run(SilenceRequest request, CommandContext context, CancellationToken cancel)
    {
        Require("detectability", request.RecordingFile);
        if (request.EventsFile is { } events)
        {
            Require("--events", events);
        }

        StudySetup setup = request.SetupFile is null ? StudySetup.Empty : SetupFile.Read(request.SetupFile);
        AuditCriteria criteria = request.CriteriaFile is null ? DefaultCriteria.All : CriteriaFile.Read(request.CriteriaFile);
        RecordingEntry entry = RecordingList.Find([request.RecordingFile], [])[0];
        SilencePlace? place = request.OutFolder is null ? null : SilencePlace.Of(request.OutFolder, entry, setup, criteria, request.EventsFile);
        var progress = new SilenceProgress(context.Error, context.ProgressColumns > 0, TimeProvider.System);
        DetectabilityResult result;
        try
        {
            result = DetectabilityStudy.Of(place?.Entry ?? entry, setup, criteria, request.EventsFile, request.Options, progress, cancel);
        }
        finally
        {
            progress.Clear();
        }

        context.Output.Write(SilenceText.Render(result, context.Style));
        if (place is not null)
        {
            Write(result, place, cancel);
            (string below, string shown) = place.IsAudit ? ("/" + place.PathOf(string.Empty), "; report.html has a section on it") : (string.Empty, string.Empty);
            context.Output.Write($"\nWritten to {OneLine.Of(place.Folder + below)}: {string.Join(", ", SilenceFiles.All)}{shown}\n");
        }

        return ExitCode.Done;
    }

    private static void Write(DetectabilityResult result, SilencePlace place, CancellationToken cancel)
    {
        (string, byte[])[] files =
        [
            (place.PathOf(SilenceFiles.Text), Encoding.UTF8.GetBytes(SilenceText.Render(result, new TerminalStyle()))),
            (place.PathOf(SilenceFiles.Table), SilenceTsv.Render(result)),
            (place.PathOf(SilenceFiles.Picture), SilenceFigure.Render(result, SilenceFigure.Size)),
            (place.PathOf(SilenceFiles.Json), SilenceJson.Render(result, ProductVersion.Text)),
        ];
        if (place.IsAudit)
        {
            Show(place.Folder, files, cancel);
            return;
        }

        using OutputBatch batch = new(place.Folder);
        foreach ((string path, byte[] bytes) in files)
        {
            batch.Add(path, bytes);
        }

        batch.Commit();
    }

    // Everything else in the audit stays as it is, whatever it was made with: pages come from its own results.
    private static void Show(string folder, (string Path, byte[] Bytes)[] files, CancellationToken cancel)
    {
        try
        {
            AuditUpdate.WithStudy(folder, ProductVersion.Text, files, cancel);
        }
        catch (ChannelAuditException fault)
        {
            throw SilenceErrors.KeptButNotShown(fault);
        }
    }

    private static void Require(string option, string file)
    {
        if (!File.Exists(file))
        {
            throw UsageErrors.NoFile(option, file);
        }
    }
}
