using System.Text;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Criteria;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Runs;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Silence;

/// <summary>Runs <c>detectability</c>: plants, audits, counts, writes.</summary>
internal static class SilenceRunner
{
    /// <summary>Runs the request.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="engine">Renews the report of an audit that is over this recording alone.</param>
    /// <param name="context">Where to write.</param>
    /// <param name="cancel">Ends it; no file has changed then.</param>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When the request cannot be met.</exception>
    public static int Run(SilenceRequest request, IScreenEngine engine, CommandContext context, CancellationToken cancel)
    {
        Require("detectability", request.RecordingFile);
        if (request.EventsFile is { } events)
        {
            Require("--events", events);
        }

        StudySetup setup = request.SetupFile is null ? StudySetup.Empty : SetupFile.Read(request.SetupFile);
        AuditCriteria criteria = request.CriteriaFile is null ? DefaultCriteria.All : CriteriaFile.Read(request.CriteriaFile);
        SilencePlace? place = request.OutFolder is null ? null : SilencePlace.Of(request.OutFolder, request.RecordingFile, setup, criteria);
        RecordingEntry entry = RecordingList.Find([request.RecordingFile], [])[0];
        entry = place?.Id is { } id ? entry with { Id = id } : entry;
        var progress = new SilenceProgress(context.Error, context.ProgressColumns > 0, TimeProvider.System);
        DetectabilityResult result;
        try
        {
            result = DetectabilityStudy.Of(entry, setup, criteria, request.EventsFile, request.Options, progress, cancel);
        }
        finally
        {
            progress.Clear();
        }

        context.Output.Write(SilenceText.Render(result, context.Style));
        if (place is not null)
        {
            Write(result, place);
            Renew(request, place, engine, context, cancel);
        }

        return ExitCode.Done;
    }

    private static void Write(DetectabilityResult result, SilencePlace place)
    {
        using OutputBatch batch = new(place.Folder);
        batch.Add(place.PathOf(SilenceFiles.Text), Encoding.UTF8.GetBytes(SilenceText.Render(result, new TerminalStyle())));
        batch.Add(place.PathOf(SilenceFiles.Table), SilenceTsv.Render(result));
        batch.Add(place.PathOf(SilenceFiles.Picture), SilenceFigure.Render(result, SilenceFigure.Size));
        batch.Add(place.PathOf(SilenceFiles.Json), SilenceJson.Render(result, ProductVersion.Text));
        batch.Commit();
    }

    // The report of one recording is made again at once; that of a study needs the other recordings.
    private static void Renew(SilenceRequest request, SilencePlace place, IScreenEngine engine, CommandContext context, CancellationToken cancel)
    {
        string names = string.Join(", ", SilenceFiles.All);
        if (place.Id is null)
        {
            context.Output.Write($"\nWritten to {place.Folder}: {names}\n");
            return;
        }

        if (!place.IsAlone)
        {
            context.Output.Write($"\nWritten to {place.Folder}/{place.PathOf(string.Empty)}: {names}\nreport.html shows it after the next screen into {place.Folder}\n");
            return;
        }

        var screen = new ScreenRunner(engine, context.Log, context.Error);
        screen.Run(
            new ScreenRequest
            {
                Paths = [request.RecordingFile],
                SetupFile = request.SetupFile,
                CriteriaFile = request.CriteriaFile,
                EventsFile = request.EventsFile,
                OutFolder = place.Folder,
                Figures = FiguresOf(place),
            },
            TextWriter.Null,
            cancel);
        context.Output.Write($"\nWritten to {place.Folder}/{place.PathOf(string.Empty)}: {names}; report.html has a section on it\n");
    }

    private static FigureChoice? FiguresOf(SilencePlace place) =>
        Directory.EnumerateFiles(Path.Combine(place.Folder, "recordings", place.Id!), "*.png").Any(file => !file.EndsWith(SilenceFiles.Picture, StringComparison.Ordinal))
            ? null
            : FigureChoice.None;

    private static void Require(string option, string file)
    {
        if (!File.Exists(file))
        {
            throw UsageErrors.NoFile(option, file);
        }
    }
}
