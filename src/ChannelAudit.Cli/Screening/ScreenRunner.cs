using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;
using Serilog;

namespace ChannelAudit.Cli.Screening;

/// <summary>Runs <c>screen</c>: finds the recordings, has each audited, has the results written, and says how it ended.</summary>
/// <param name="engine">Audits and writes.</param>
/// <param name="log">For what is going on.</param>
/// <param name="error">For recordings that cannot be read.</param>
internal sealed class ScreenRunner(IScreenEngine engine, ILogger log, TextWriter error)
{
    /// <summary>Runs the request.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="output">For the table that a person reads first.</param>
    /// <param name="cancel">Ends the run; files already written are whole.</param>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When the request cannot be met; nothing has been written then.</exception>
    public int Run(ScreenRequest request, TextWriter output, CancellationToken cancel)
    {
        // Everything that can be refused is refused before the first recording costs time.
        ImmutableArray<RecordingEntry> entries = RecordingList.Find(request.Paths, [.. FilesOtherThanRecordings(request)]);
        FigureChoice figures = request.Figures ?? (entries.Length == 1 ? FigureChoice.All : FigureChoice.Summary);
        ScreenInputs inputs = ReadInputs(request, figures == FigureChoice.All);
        ImmutableArray<string> strangers = inputs.Impedance?.NotAmong([.. entries.Select(entry => entry.Id)]) ?? [];
        OutputFolder.Check(request.OutFolder);

        var results = new List<RecordingResult>();
        var unread = new List<UnreadRecording>();
        foreach (RecordingEntry entry in entries)
        {
            cancel.ThrowIfCancellationRequested();
            AuditOne(entry, inputs, results, unread, cancel);
        }

        if (results.Count == 0)
        {
            return ExitCode.Unread;
        }

        var run = new AuditRun
        {
            Version = ProductVersion.Text,
            Criteria = inputs.Criteria,
            Setup = inputs.Setup,
            Impedance = inputs.Impedance,
            Recordings = [.. results],
            Unread = [.. unread],
            Warnings = inputs.Impedance is { } log ? [.. log.Warnings, .. strangers.Select(id => NotScreened(log, id))] : [],
        };
        engine.Write(run, request.OutFolder, figures, cancel);
        engine.Print(run, request.OutFolder, output);
        return unread.Count > 0 ? ExitCode.Unread : FailCode(run, request.FailOn);
    }

    private static ScreenInputs ReadInputs(ScreenRequest request, bool withViews)
    {
        if (request.EventsFile is { } events && !File.Exists(events))
        {
            throw UsageErrors.NoFile("--events", events);
        }

        StudySetup setup = request.SetupFile is null ? StudySetup.Empty : SetupFile.Read(request.SetupFile);
        return new ScreenInputs(
            setup,
            request.CriteriaFile is null ? DefaultCriteria.All : CriteriaFile.Read(request.CriteriaFile),
            request.EventsFile,
            request.ImpedanceFile is null ? null : ImpedanceLog.Read(request.ImpedanceFile, setup),
            withViews);
    }

    private static IEnumerable<string> FilesOtherThanRecordings(ScreenRequest request) =>
        new[] { request.SetupFile, request.CriteriaFile, request.EventsFile, request.ImpedanceFile }.OfType<string>();

    // A typing mistake in an ID would else be a recording without readings, and nobody would see why.
    private static Warning NotScreened(ImpedanceLog log, string recording) =>
        new(log.FileName, "column recording", $"readings of '{Text.OneLine.Of(recording)}', which is not among the recordings of this run, are not used");

    private void AuditOne(
        RecordingEntry entry, ScreenInputs inputs, List<RecordingResult> results, List<UnreadRecording> unread, CancellationToken cancel)
    {
        log.Debug("auditing {Path:l}", entry.RelativePath);
        try
        {
            results.Add(engine.Audit(entry, inputs, cancel));
        }
        catch (ChannelAuditException fault) when (fault.Kind == FaultKind.Recording)
        {
            ErrorReport.Write(error, fault);
            log.Debug(fault, "where the fault was found");
            unread.Add(new UnreadRecording(entry.RelativePath, fault.Message, fault.Hint));
        }
    }

    private static int FailCode(AuditRun run, Grade? failOn) =>
        failOn is { } grade && run.Recordings.Any(recording => recording.Channels.Any(channel => IsAsBad(channel, grade)))
            ? ExitCode.Reached
            : ExitCode.Done;

    private static bool IsAsBad(ChannelResult channel, Grade grade) =>
        channel.Verdict >= grade || channel.Cells.Any(cell => cell.Verdict >= grade);
}
