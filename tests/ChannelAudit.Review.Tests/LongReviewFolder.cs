using ChannelAudit.Criteria;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;

namespace ChannelAudit.Review.Tests;

/// <summary>Recordings of 15 minutes, 2000 Hz, three sites, 450 trials: four of them hold 5,400 cells.</summary>
internal sealed class LongReviewFolder : IDisposable
{
    private const int Trials = 450;

    private readonly TemporaryFolder _folder = new();

    /// <summary>Writes and audits them; the recordings are one and the same, under different names.</summary>
    public LongReviewFolder(int recordings)
    {
        Directory.CreateDirectory(Data);
        string first = Path.Combine(Data, "A.edf");
        LongRecording.Write(Plan, first);
        RecordingResult result = RecordingAudit.Of(new RecordingEntry("A", first, "A.edf"), StudySetup.Empty, DefaultCriteria.All, null, CancellationToken.None);
        string[] ids = [.. Enumerable.Range(0, recordings).Select(i => ((char)('A' + i)).ToString())];
        foreach (string id in ids.Skip(1))
        {
            File.Copy(first, Path.Combine(Data, id + ".edf"));
        }

        // As screen writes it, so that tables can be brought up to date from it.
        AuditRun run = new() { Version = "0.1.0", Criteria = DefaultCriteria.All, Setup = StudySetup.Empty };
        RecordingStamp stamp = new(new string('7', 64), "none");
        using AuditFolder place = AuditFolder.Open(Audit);
        using RunWriter writer = new(run, place, isAlone: recordings == 1);
        foreach (string id in ids)
        {
            RecordingResult named = result with { Id = id, Path = id + ".edf" };
            writer.Keep(named, stamp, []);
            writer.Add(named, stamp);
        }

        writer.Finish([], CancellationToken.None);
    }

    /// <summary>The folder of the audit.</summary>
    public string Audit => _folder.In("audit");

    /// <summary>The folder of the recordings.</summary>
    public string Data => _folder.In("study");

    /// <summary>A review of every cell.</summary>
    public ReviewOptions Options => new() { Folder = Audit, DataRoot = Data, By = "R.Viewer", Scope = ReviewScope.All };

    private static SessionPlan Plan { get; } = new()
    {
        Seed = 15,
        DurationS = 900,
        Trials =
        [
            .. Enumerable.Range(0, Trials).Select(i => new PlannedTrial
            {
                OnsetS = 1 + (2M * i), DurationS = i == Trials - 1 ? 0.9M : 1.5M, Label = i % 2 == 0 ? "harbour" : "meadow", Role = TrialRole.Scored,
                Activity = [new SiteActivity("cheek", 8)],
            }),
        ],
    };

    /// <inheritdoc/>
    public void Dispose() => _folder.Dispose();
}
