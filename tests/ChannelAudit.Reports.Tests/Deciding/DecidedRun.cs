using ChannelAudit.Decisions;
using ChannelAudit.Reports.Deciding;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tests.Output;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Deciding;

/// <summary>The sample run in a folder of its own, decided about at a fixed time.</summary>
internal sealed class DecidedRun : IDisposable
{
    public const string Faulty = "day1+p07";

    private readonly TemporaryFolder _folder = new();

    public DecidedRun(params RecordingResult[] recordings)
    {
        Run = recordings.Length == 0 ? SampleResults.Run() : SampleResults.Run(recordings);
        Write();
    }

    public SampleRun Run { get; }

    public string Folder => _folder.Path;

    public StoredAudit Audit => StoredAudit.Open(Folder);

    public Ledger Ledger => Ledger.Read(Folder);

    public void Dispose() => _folder.Dispose();

    public string Read(string file) => _folder.Read(file);

    /// <summary>Writes the run into the folder again, with the decisions that stand there.</summary>
    public void Write() => Run.Write(Folder, figures: null, CancellationToken.None);

    public Decision Decide(string? channel, int? trial, Grade verdict, string reason = "looked at it", string recording = Faulty, string by = "R. Viewer", bool blind = false) =>
        DecisionDesk.Decide(Audit, [new DecisionRequest(recording, channel, trial, verdict, reason, by)], "decide", blind, new Noon(), CancellationToken.None)[0];

    public void Withdraw(int number) => LedgerWriter.Withdraw(Folder, number, "R. Viewer", "a slip", "decide", new Noon(), CancellationToken.None);

    /// <summary>A result of the run with the decisions about it, as it is or as it may have become.</summary>
    public RecordingResult With(RecordingResult? now = null, string? criteria = null) =>
        (now ?? Run.Recordings.Single(one => one.Id is Faulty)).With(Ledger, criteria ?? SampleResults.CriteriaSha256);

    private sealed class Noon : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 12, 12, 0, 0, TimeSpan.Zero);
    }
}
