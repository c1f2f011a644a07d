using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;
using Serilog;

namespace ChannelAudit.Cli.Screening;

/// <summary>Runs <c>screen</c>: finds the recordings, has each audited unless an earlier run did so from the same inputs, has the results written, and says how it ended.</summary>
/// <param name="engine">Audits and writes.</param>
/// <param name="log">For what is going on.</param>
/// <param name="error">For recordings that cannot be read, and for progress.</param>
/// <param name="progressColumns">The width of the terminal that standard error is; 0 when it is none.</param>
internal sealed class ScreenRunner(IScreenEngine engine, ILogger log, TextWriter error, int progressColumns = 0)
{
    /// <summary>Runs the request.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="output">For the table that a person reads first.</param>
    /// <param name="cancel">Ends the run; recordings that are done wait for the next one.</param>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When the request cannot be met; the audit that stood there is as it was.</exception>
    public int Run(ScreenRequest request, TextWriter output, CancellationToken cancel)
    {
        // Everything that can be refused is refused before the first recording costs time.
        FoundRecordings found = request.Known is { } known ? new FoundRecordings(known, []) : RecordingList.Search(request.Paths, [.. FilesOtherThanRecordings(request)]);
        ImmutableArray<RecordingEntry> all = found.Entries;
        ImmutableArray<RecordingEntry> entries = request.Share is { } own ? own.From(all) : all;
        if (!found.PassedOver.IsEmpty)
        {
            log.Warning("passed over, since they hold no lines of numbers: {Files:l}; name one by itself to have it audited", Text.OneLine.List(found.PassedOver));
        }

        SayPersonFields(entries);
        FigureChoice figures = request.Figures ?? (all.Length == 1 ? FigureChoice.All : FigureChoice.Summary);
        ScreenInputs inputs = ReadInputs(request, figures == FigureChoice.All && !request.DrawsNothing) with { Threads = request.Jobs / Math.Max(1, entries.Length) };
        if (request.EventsFile is { } events && all.Length > 1)
        {
            throw UsageErrors.EventsOfOne(events, all.Length);
        }

        bool isAlone = request.IsAlone ?? (all.Length == 1);
        SharePlan? plan = request.Share is { } share ? new SharePlan(share, all, ScreenWork.WordOf(figures), isAlone) : null;
        using IScreenOutput place = engine.Open(RunOf(inputs, all), request.OutFolder, figures, isAlone, plan, request.WithParquet);
        ScreenWork work = new(engine, place, inputs, figures, log, new Progress(error, progressColumns > 0, progressColumns, entries.Length, TimeProvider.System));
        RunDigest? standing = place.HasAudit ? work.AsBefore(entries, request.Jobs, cancel) : null;
        work.Progress.Clear();
        if (standing is not null)
        {
            place.Print(standing, isUnchanged: true, output);
            return FailCode(standing, request.FailOn);
        }

        ImmutableArray<string> dropped = place.NotAmong(entries.Select(entry => entry.Id));
        ImmutableArray<UnreadRecording> unread = AuditAll(work, place, entries, request.Jobs, cancel);
        cancel.ThrowIfCancellationRequested();
        if (unread.Length == entries.Length && plan is null)
        {
            return ExitCode.Unread;
        }

        SayTakenOver(work.Progress.TakenOver, entries.Length);
        RunDigest digest = place.Finish(unread, cancel);
        place.Print(digest, isUnchanged: false, output);
        LeftOut.Say(log, request.OutFolder, dropped, place.OutdatedStudies);
        return unread.Length > 0 ? ExitCode.Unread : FailCode(digest, request.FailOn);
    }

    private void SayPersonFields(ImmutableArray<RecordingEntry> entries)
    {
        int filled = entries.Count(entry => EdfPersonFields.AreFilledIn(entry.FilePath));
        if (filled > 0)
        {
            log.Warning(
                "{Headers:l} has words about the participant or the session (name, code, birth date, free text): nothing of them is in any output; take them out before you pass the file on",
                entries.Length == 1 ? "the header" : $"of {entries.Length.Plain()} headers {filled.Plain()}");
        }
    }

    private void SayTakenOver(int recordings, int all)
    {
        if (recordings > 0 && all > 1)
        {
            error.Write($"{recordings.Plain()} of {Quantities.Many(all, "recording")} taken over from an earlier run\n");
        }
    }

    private ImmutableArray<UnreadRecording> AuditAll(ScreenWork work, IScreenOutput place, ImmutableArray<RecordingEntry> entries, int jobs, CancellationToken cancel)
    {
        ImmutableArray<UnreadRecording>.Builder unread = ImmutableArray.CreateBuilder<UnreadRecording>();
        try
        {
            foreach (ScreenedRecording screened in InOrder.Run(entries, jobs, entry => work.Screen(entry, cancel)))
            {
                if (screened.Fault is { } fault)
                {
                    work.Progress.Clear();
                    ErrorReport.Write(error, WithPath(fault, screened.Entry));
                    unread.Add(new UnreadRecording(screened.Entry.RelativePath, fault.Message, fault.Hint));
                }
                else
                {
                    place.Add(screened.Result!, screened.Stamp!);
                }

                work.Progress.Ends(screened.WasTakenOver);
            }
        }
        finally
        {
            work.Progress.Clear();
        }

        return unread.ToImmutable();
    }

    /// <summary>A fault of a recording with its path: among folders of participants the name of a file alone says nothing.</summary>
    public static ChannelAuditException WithPath(ChannelAuditException fault, RecordingEntry entry)
    {
        string name = Text.OneLine.Of(Path.GetFileName(entry.FilePath));
        return fault.Message.StartsWith(name, StringComparison.Ordinal)
            ? new ChannelAuditException(fault.Kind, Text.OneLine.Of(entry.RelativePath) + fault.Message[name.Length..], fault.Hint, fault)
            : fault;
    }

    /// <summary>What is said of a run as a whole.</summary>
    public static AuditRun RunOf(ScreenInputs inputs, ImmutableArray<RecordingEntry> entries)
    {
        ImmutableArray<string> strangers = inputs.Impedance?.NotAmong([.. entries.Select(entry => entry.Id)]) ?? [];
        return new AuditRun
        {
            Version = ProductVersion.Text,
            Criteria = inputs.Criteria,
            Setup = inputs.Setup,
            Impedance = inputs.Impedance,
            Inputs = inputs.Files,
            Warnings =
            [
                .. UnfitPatterns.Of(inputs.Setup, [.. entries.Select(entry => entry.RelativePath)]),
                .. inputs.Impedance is { } log ? [.. log.Warnings, .. strangers.Select(id => NotScreened(log, id))] : ImmutableArray<Warning>.Empty,
            ],
        };
    }

    /// <summary>Reads the files that recordings are audited with.</summary>
    /// <exception cref="ChannelAuditException">When one is missing or not in order.</exception>
    public static ScreenInputs ReadInputs(ScreenRequest request, bool withViews)
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
            withViews)
        {
            Files = FilesOf(request.CriteriaFile, request.SetupFile, request.ImpedanceFile, request.EventsFile),
        };
    }

    /// <summary>The files that an audit is made with, as the audit keeps them.</summary>
    /// <exception cref="ChannelAuditException">When one cannot be read.</exception>
    public static ImmutableArray<RunInput> FilesOf(string? criteria, string? setup, string? readings, string? events) =>
    [
        .. Roles(criteria, setup, readings, events).Where(file => file.Path is not null).Select(file => RunInput.Read(file.Role, file.Path!)),
    ];

    private static IEnumerable<(string Role, string? Path)> Roles(string? criteria, string? setup, string? readings, string? events) =>
        [(RunInput.Criteria, criteria), (RunInput.Setup, setup), (RunInput.Readings, readings), (RunInput.Events, events)];

    private static IEnumerable<string> FilesOtherThanRecordings(ScreenRequest request) =>
        Roles(request.CriteriaFile, request.SetupFile, request.ImpedanceFile, request.EventsFile).Select(file => file.Path).OfType<string>();

    // A typing mistake in an ID would else be a recording without readings, and nobody would see why.
    private static Warning NotScreened(ImpedanceLog log, string recording) =>
        new(log.FileName, "column recording", $"readings of '{Text.OneLine.Of(recording)}', which is not among the recordings of this run, are not used");

    private static int FailCode(RunDigest digest, Grade? failOn)
    {
        VerdictCounts all = VerdictCounts.Sum([digest.Channels, digest.Trials]);
        bool isReached = failOn switch
        {
            Grade.Reject => all.Reject > 0,
            Grade.Questionable => all.Pass < all.Total,
            _ => false,
        };
        return isReached ? ExitCode.Reached : ExitCode.Done;
    }
}
