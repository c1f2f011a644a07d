using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Results;
using ChannelAudit.Studies;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Digests;

/// <summary>Takes results one after the other and keeps what lists and counts need; memory does not grow with the length of recordings.</summary>
public sealed class RunCollector
{
    /// <summary>Recordings that are kept in full; the rest is counted.</summary>
    public const int MostDetailed = 10;

    private readonly List<RecordingDigest> _digests = [];
    private readonly Dictionary<string, RecordingResult> _detailed = new(StringComparer.Ordinal);
    private readonly OddRecordings _odd = new();
    private readonly ExclusionTally _exclusions = new();
    private readonly HashSet<string> _codes = new(StringComparer.Ordinal);

    /// <summary>Adds a result.</summary>
    public void Add(RecordingResult recording, RecordingStamp stamp)
    {
        RecordingDigest digest = RecordingDigest.Of(recording, stamp);
        _digests.Add(digest);
        _odd.Add(recording);
        _exclusions.Add(recording);
        _codes.UnionWith(Codes(recording));
        _detailed[recording.Id] = WithoutNumbers(recording);
        if (_detailed.Count > MostDetailed)
        {
            HashSet<string> kept = [.. Worst(true).Select(one => one.Id)];
            foreach (string id in _detailed.Keys.Where(id => !kept.Contains(id)).ToArray())
            {
                _detailed.Remove(id);
            }
        }
    }

    /// <summary>What was collected.</summary>
    /// <param name="unread">Recordings that could not be read.</param>
    /// <param name="ledger">The decisions that the results came with; none when left out.</param>
    public RunDigest Digest(ImmutableArray<UnreadRecording> unread, Ledger? ledger = null) => new()
    {
        Recordings = [.. _digests.OrderBy(digest => digest.Id, StringComparer.Ordinal)],
        Detailed = [.. Worst(_digests.Count == 1).Select(digest => _detailed[digest.Id])],
        Codes = [.. _codes],
        Odd = _odd.Found(),
        Decisions = DecisionsDigest.Of(ledger ?? Ledger.Empty, _digests.ToDictionary(digest => digest.Id, digest => digest.Decisions, StringComparer.Ordinal)),
        Fairness = _exclusions.Report(),
        Unread = unread,
    };

    /// <summary>Those of some recordings that are shown in full, worst first.</summary>
    /// <param name="recordings">The recordings.</param>
    /// <param name="withPassed">Whether one that passes is shown, too.</param>
    internal static IEnumerable<RecordingDigest> ShownInFull(IEnumerable<RecordingDigest> recordings, bool withPassed) =>
        RecordingDigest.WorstFirst(recordings).Where(recording => withPassed || recording.Worst != Grade.Pass).Take(MostDetailed);

    // Only those still kept can be among the worst: one that was dropped has ten before it.
    private IEnumerable<RecordingDigest> Worst(bool withPassed) => ShownInFull(_digests.Where(digest => _detailed.ContainsKey(digest.Id)), withPassed);

    private static IEnumerable<string> Codes(RecordingResult recording) => recording.Channels
        .SelectMany(channel => channel.Reasons.Concat(channel.Cells.SelectMany(cell => cell.Reasons)))
        .Concat(recording.Information.Select(finding => finding.Reason).Where(reason => !ReasonCode.All.Contains(reason, StringComparer.Ordinal)));

    private static RecordingResult WithoutNumbers(RecordingResult recording) => recording with
    {
        Channels =
        [
            .. recording.Channels.Select(channel => channel with
            {
                View = null,
                Cells = [.. channel.Cells.Select(cell => cell with { Measures = [], BaselineMeasures = [] })],
            }),
        ],
        Pairs = [.. recording.Pairs.Select(pair => pair with { View = null, Rows = [] })],
    };
}
