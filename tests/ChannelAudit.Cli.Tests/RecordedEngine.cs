using System.Collections.Immutable;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Cli.Tests;

/// <summary>Stands for the engine: remembers what it was asked, and gives the verdict that a test wants.</summary>
internal sealed class RecordedEngine : IScreenEngine
{
    private readonly List<string> _audited = [];

    /// <summary>Ids of what was audited, in ordinal order: recordings are audited on several threads.</summary>
    public string[] Audited
    {
        get
        {
            lock (_audited)
            {
                return [.. _audited.Order(StringComparer.Ordinal)];
            }
        }
    }

    /// <summary>With what recordings were audited; null when nothing was written.</summary>
    public AuditRun? Written { get; private set; }

    /// <summary>The recordings written.</summary>
    public RunDigest? Digest { get; private set; }

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

    public IScreenOutput Open(AuditRun run, string folder, FigureChoice figures, bool isAlone, SharePlan? share = null, bool withParquet = false)
    {
        OutputFolder.Check(folder);
        return new Place(this, run, folder, figures);
    }

    public RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, string sha256, CancellationToken cancel)
    {
        lock (_audited)
        {
            _audited.Add(recording.Id);
        }

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

    /// <summary>Remembers what would have been written.</summary>
    private sealed class Place(RecordedEngine engine, AuditRun run, string folder, FigureChoice figures) : IScreenOutput
    {
        private readonly RunCollector collector = new();

        public bool HasAudit => false;

        public ImmutableArray<string> OutdatedStudies => [];

        public ImmutableArray<string> NotAmong(IEnumerable<string> ids) => [];

        public RunDigest? AsBefore(IReadOnlyList<(string Id, RecordingStamp Stamp)> recordings, int jobs) => null;

        public RecordingResult? TakeOver(string id, RecordingStamp stamp) => null;

        public void Keep(RecordingResult recording, RecordingStamp stamp, CancellationToken cancel)
        {
        }

        public void Add(RecordingResult recording, RecordingStamp stamp) => collector.Add(recording, stamp);

        public RunDigest Finish(ImmutableArray<UnreadRecording> unread, CancellationToken cancel)
        {
            (engine.Written, engine.Folder, engine.Figures) = (run, folder, figures);
            RunDigest digest = collector.Digest(unread);
            engine.Digest = digest;
            return digest;
        }

        public void Print(RunDigest digest, bool isUnchanged, TextWriter output) => output.Write($"{folder}: printed\n");

        public void Dispose()
        {
        }
    }
}
