using ChannelAudit.Cli.Screening;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Cli.Tests;

/// <summary>Stands for the engine: remembers what it was asked, and gives the verdict that a test wants.</summary>
internal sealed class RecordedEngine : IScreenEngine
{
    /// <summary>Ids in the order in which they were audited.</summary>
    public List<string> Audited { get; } = [];

    /// <summary>What was written, or null.</summary>
    public AuditRun? Written { get; private set; }

    /// <summary>The pictures asked for, or null when nothing was written.</summary>
    public FigureChoice? Figures { get; private set; }

    /// <summary>The folder written to.</summary>
    public string? Folder { get; private set; }

    /// <summary>The inputs of the last recording.</summary>
    public ScreenInputs? Inputs { get; private set; }

    /// <summary>The channel's verdict of every recording.</summary>
    public Grade ChannelVerdict { get; init; }

    /// <summary>The only trial's verdict of every recording.</summary>
    public Grade TrialVerdict { get; init; }

    /// <summary>What happens before a recording of an id is audited.</summary>
    public Action<string>? Before { get; init; }

    public RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, CancellationToken cancel)
    {
        Audited.Add(recording.Id);
        Inputs = inputs;
        Before?.Invoke(recording.Id);
        return new RecordingResult
        {
            Id = recording.Id,
            Path = recording.RelativePath,
            Sha256 = string.Empty,
            Format = "EDF",
            DurationS = 1,
            Mains = new MainsResult(50, 50, "nominal"),
            TrialsFrom = "blocks",
            Trials = [],
            Channels = [Channel()],
            Pairs = [],
        };
    }

    public void Write(AuditRun run, string folder, FigureChoice figures, CancellationToken cancel)
    {
        Written = run;
        Folder = folder;
        Figures = figures;
    }

    public void Print(AuditRun run, string folder, TextWriter output) => output.Write($"{folder}: printed\n");

    private ChannelResult Channel() => new()
    {
        Name = "cheek",
        Label = "EMG cheek",
        RateHz = 1000,
        BandFromHz = 20,
        BandToHz = 450,
        Verdict = ChannelVerdict,
        Reasons = [],
        NotAssessed = [],
        Measures = [],
        Findings = [],
        Cells = [new CellResult { Trial = 1, Verdict = TrialVerdict, Reasons = [], NotAssessed = [], Measures = [], Findings = [] }],
    };
}
