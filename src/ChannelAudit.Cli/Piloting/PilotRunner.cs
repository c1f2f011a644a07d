using System.Collections.Immutable;
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
    private readonly RecordingEntry _entry;
    private readonly StudySetup _setup;
    private readonly AuditCriteria _criteria;
    private readonly ImpedanceLog? _readings;
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

        if (!File.Exists(request.RecordingFile))
        {
            throw UsageErrors.NoFile("pilot", request.RecordingFile);
        }

        _entry = RecordingList.Find([request.RecordingFile], [])[0];
        _setup = request.SetupFile is null ? StudySetup.Empty : SetupFile.Read(request.SetupFile);
        _criteria = request.CriteriaFile is null ? DefaultCriteria.All : CriteriaFile.Read(request.CriteriaFile);
        _readings = request.ImpedanceFile is { } readings ? ImpedanceLog.Read(readings, _setup) : null;
        OutputFolder.Check(request.OutFolder);
        _earlier = AttemptsJson.Read(request.OutFolder);
        if (_earlier.IsEmpty && OutputFolder.IsAudit(request.OutFolder))
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
        PilotReport report = PilotAudit.Of(_entry, _setup, _criteria, _request.EventsFile, _readings, cancel, isGrowing);
        AttemptSeries attempts = AttemptSeries.With(_earlier, report, _request.StartBecause);
        AuditRun run = new()
        {
            Version = ProductVersion.Text,
            Criteria = _criteria,
            Setup = _setup,
        };
        ReadOnlyMemory<byte>? picture = _request.WithPicture ? PilotFigure.Render(report) : default(ReadOnlyMemory<byte>?);
        PilotWriter.Write(run, report, attempts, picture, _request.OutFolder, cancel);
        return PilotScreen.Render(report, attempts.Changes, attempts.Now, _style) + Written();
    }

    private string Written() =>
        $"\nWritten to {_request.OutFolder}: {(_request.WithPicture ? PilotFiles.Picture + ", " : string.Empty)}{PilotFiles.DoNext}, report.html and the tables of screen\n";
}
