using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Screening;

/// <summary>The results of a share of a run, which wait in a folder until all shares are put together.</summary>
internal sealed class ShareOutput : IScreenOutput
{
    private readonly SharePlan _plan;
    private readonly FigureChoice _figures;
    private readonly string _folder;
    private readonly ShareFolder _place;
    private readonly RunCollector _collector = new();
    private readonly ImmutableArray<(string Id, string InputsSha256)>.Builder _done = ImmutableArray.CreateBuilder<(string, string)>();

    /// <summary>Opens it.</summary>
    /// <param name="run">With what the recordings are audited.</param>
    /// <param name="folder">The folder as the user gave it.</param>
    /// <param name="figures">Pictures to draw.</param>
    /// <param name="plan">What it is a share of.</param>
    /// <exception cref="ChannelAuditException">When the folder is not this share's, or cannot be written.</exception>
    public ShareOutput(AuditRun run, string folder, FigureChoice figures, SharePlan plan)
    {
        (_plan, _figures, _folder) = (plan, figures, folder);
        _place = ShareFolder.Open(run, plan, folder);
    }

    /// <inheritdoc/>
    public bool HasAudit => false;

    /// <inheritdoc/>
    public ImmutableArray<string> OutdatedStudies => [];

    /// <inheritdoc/>
    public ImmutableArray<string> NotAmong(IEnumerable<string> ids) => [];

    /// <inheritdoc/>
    public RunDigest? AsBefore(IReadOnlyList<(string Id, RecordingStamp Stamp)> recordings, int jobs) => null;

    /// <inheritdoc/>
    public RecordingResult? TakeOver(string id, RecordingStamp stamp) => _place.TakeOver(id, stamp);

    /// <inheritdoc/>
    public void Keep(RecordingResult recording, RecordingStamp stamp, CancellationToken cancel) =>
        _place.Keep(recording, stamp, RecordingPictures.Of(recording, _figures, cancel));

    /// <inheritdoc/>
    public void Add(RecordingResult recording, RecordingStamp stamp)
    {
        _collector.Add(recording, stamp);
        _done.Add((recording.Id, stamp.InputsSha256));
    }

    /// <inheritdoc/>
    public RunDigest Finish(ImmutableArray<UnreadRecording> unread, CancellationToken cancel)
    {
        _place.Finish(_done.ToImmutable(), unread);
        return _collector.Digest(unread);
    }

    /// <inheritdoc/>
    public void Print(RunDigest digest, bool isUnchanged, TextWriter output) => output.Write(
        $"""
        Share {_plan.Share} is in {OneLine.Of(_folder)}: {_done.Count.Plain()} of {Quantities.Many(_plan.All.Length, "recording")} audited{(digest.Unread.IsEmpty ? string.Empty : $", {digest.Unread.Length.Plain()} could not be read")}.
        When all {_plan.Share.Of.Plain()} are there: channelaudit merge SHARE... --out DIR

        """.ReplaceLineEndings("\n"));

    /// <inheritdoc/>
    public void Dispose() => _place.Dispose();
}
