using System.Collections.Immutable;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Criteria;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using Serilog.Core;

namespace ChannelAudit.Cli.Verifying;

/// <summary>Makes an audit again in a scratch folder, from its recordings or from its own results.</summary>
/// <param name="run">What the audit says of how it was made.</param>
/// <param name="scratch">Where to.</param>
internal sealed class Remake(RecordedRun run, ScratchFolder scratch)
{
    private readonly KeptPictures _pictures = new(run);
    private readonly KeptStudyFiles _studies = new(run, scratch);

    /// <summary>The folder it is made in.</summary>
    public string Folder => scratch.In("again");

    /// <summary>From the recordings, with the decisions replayed.</summary>
    /// <param name="entries">The recordings.</param>
    /// <param name="request">Pictures and threads.</param>
    /// <param name="cancel">Ends it.</param>
    /// <returns>Recordings that could not be read, with what was found.</returns>
    /// <exception cref="ChannelAuditException">When inputs and recordings do not fit each other.</exception>
    public IReadOnlyDictionary<string, string> FromRecordings(ImmutableArray<RecordingEntry> entries, VerifyRequest request, CancellationToken cancel)
    {
        CopyDecisions();
        VerifyEngine engine = new(request.WithPictures ? null : _pictures, _studies);
        ScreenRequest screen = Inputs() with { Known = entries, IsAlone = run.IsAlone, DrawsNothing = !request.WithPictures, Jobs = request.Jobs ?? Environment.ProcessorCount };
        new ScreenRunner(engine, Logger.None, TextWriter.Null).Run(screen, TextWriter.Null, cancel);
        return engine.Unread;
    }

    /// <summary>From the results in the audit itself: no sample is looked at.</summary>
    /// <exception cref="ChannelAuditException">When a result is missing or damaged, or the inputs are not in order.</exception>
    public void FromResults(CancellationToken cancel)
    {
        CopyDecisions();
        ScreenInputs inputs = ReadInputs();
        AuditRun again = ScreenRunner.RunOf(inputs, [.. run.Audit.Recordings.Select(recording => new RecordingEntry(recording.Id, recording.Path, recording.Path))]);
        using AuditOutput output = new(again, Folder, Figures, run.IsAlone, new TerminalStyle(), _pictures.Of, run.WithParquet);
        _studies.CopyTo(Folder);
        foreach (StoredRecording recording in run.Audit.Recordings)
        {
            RecordingResult result = run.Audit.ResultOf(recording);
            output.Keep(result, run.Stamps[recording.Id], cancel);
            output.Add(result, run.Stamps[recording.Id]);
        }

        output.Finish(run.Unread, cancel);
    }

    /// <summary>Reads the files that the audit was made with, from copies in the scratch folder.</summary>
    /// <exception cref="ChannelAuditException">When one is not in order.</exception>
    public ScreenInputs ReadInputs() => ScreenRunner.ReadInputs(Inputs(), withViews: false);

    private FigureChoice Figures => run.Figures switch { "none" => FigureChoice.None, "summary" => FigureChoice.Summary, _ => FigureChoice.All };

    private ScreenRequest Inputs() => new()
    {
        Paths = [],
        CriteriaFile = string.Equals(run.Audit.Version, ProductVersion.Text, StringComparison.Ordinal) ? Restored(RunInput.Criteria) : Limits(),
        SetupFile = Restored(RunInput.Setup),
        ImpedanceFile = Restored(RunInput.Readings),
        EventsFile = Restored(RunInput.Events),
        OutFolder = Folder,
        Figures = Figures,
        WithParquet = run.WithParquet,
    };

    private string? Restored(string role) => RecordedInputs.Of(run, role) is { } file ? scratch.Put(file) : null;

    // Another version may have other defaults: all limits that were in force then.
    private string Limits() => scratch.Put(new RunInput(RunInput.Criteria, "criteria.toml", [.. System.Text.Encoding.UTF8.GetBytes(CriteriaText.Canonical(run.Audit.Criteria))]));

    // A ledger that does not hold cannot be replayed; what no decision touches is made again without it.
    private void CopyDecisions()
    {
        string ledger = Path.Combine(run.Audit.Folder, Ledger.FileName);
        if (run.LedgerFault is null && File.Exists(ledger))
        {
            scratch.Copy(ledger, Path.Combine(Folder, Ledger.FileName));
        }
    }
}
