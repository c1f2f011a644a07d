using System.Collections.Immutable;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Piloting;

/// <summary>Runs <c>pilot</c>: audits, writes, says what to do next.</summary>
internal sealed class PilotRunner
{
    private readonly PilotRequest _request;
    private readonly StudySetup _setup;
    private readonly AuditCriteria _criteria;
    private readonly ImpedanceLog? _readings;
    private readonly ImmutableArray<RunInput> _files;
    private readonly ImmutableArray<PilotAttempt> _earlier;
    private readonly TerminalStyle _style;

    /// <summary>Reads everything that a person has written; whatever can be refused is refused here.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="style">What the terminal can show.</param>
    /// <exception cref="ChannelAuditException">When the request cannot be met.</exception>
    public PilotRunner(PilotRequest request, TerminalStyle style)
    {
        _request = request;
        _style = style;
        if (request.EventsFile is { } events && !File.Exists(events))
        {
            throw UsageErrors.NoFile("--events", events);
        }

        RefuseMissing(request);
        _setup = request.SetupFile is null ? StudySetup.Empty : SetupFile.Read(request.SetupFile);
        _criteria = request.CriteriaFile is null ? DefaultCriteria.All : CriteriaFile.Read(request.CriteriaFile);
        _readings = request.ImpedanceFile is { } readings ? ImpedanceLog.Read(readings, _setup) : null;
        _files = ScreenRunner.FilesOf(request.CriteriaFile, request.SetupFile, request.ImpedanceFile, request.EventsFile);
        OutputFolder.Check(request.OutFolder);
        _earlier = AttemptsJson.Read(request.OutFolder);
        if (OutputFolder.IsAudit(request.OutFolder) && !PilotFiles.AreIn(request.OutFolder))
        {
            throw UsageErrors.AuditInTheWay(request.OutFolder);
        }
    }

    /// <summary>Audits the recording as it is now and writes what follows.</summary>
    /// <param name="isGrowing">Whether it is still being written.</param>
    /// <param name="cancel">Ends it; files already written are whole.</param>
    /// <returns>What the technician reads.</returns>
    /// <exception cref="ChannelAuditException">When the recording cannot be read, or does not fit the setup, or nothing can be written.</exception>
    public string Once(bool isGrowing, CancellationToken cancel)
    {
        RecordingEntry entry = RecordingList.Find([_request.RecordingFile], [])[0];
        PilotReport report = PilotAudit.Of(entry, _setup, _criteria, _request.EventsFile, _readings, cancel, isGrowing);
        AttemptSeries attempts = AttemptSeries.With(_earlier, report, _request.StartBecause);
        AuditRun run = new()
        {
            Version = ProductVersion.Text,
            Criteria = _criteria,
            Setup = _setup,
            Impedance = _readings,
            Inputs = _files,
        };
        ReadOnlyMemory<byte>? picture = _request.WithPicture ? PilotFigure.Render(report) : default(ReadOnlyMemory<byte>?);
        PilotWriter.Write(run, report, attempts, picture, _request.OutFolder, cancel);
        return PilotScreen.Render(report, attempts, _style) + Written();
    }

    // What is still to be recorded need not be there yet, but its folder does.
    private static void RefuseMissing(PilotRequest request)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(request.RecordingFile)) ?? string.Empty;
        bool isAwaited = request.Follow && Directory.Exists(folder) && !Directory.Exists(request.RecordingFile);
        if (!File.Exists(request.RecordingFile) && !isAwaited)
        {
            throw UsageErrors.NoFile("pilot", request.RecordingFile);
        }
    }

    private string Written()
    {
        string picture = _request.WithPicture ? PilotFiles.Picture + ", " : string.Empty;
        return $"\nWritten to {_request.OutFolder}: {picture}{PilotFiles.DoNext}, report.html and the tables of screen\n";
    }
}
