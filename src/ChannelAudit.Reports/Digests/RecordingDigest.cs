using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Digests;

/// <summary>What a run keeps in memory of a recording: enough for lists and counts, the rest stands in its files.</summary>
public sealed record RecordingDigest
{
    /// <summary>The recording's id.</summary>
    public required string Id { get; init; }

    /// <summary>Path relative to the given root.</summary>
    public required string Path { get; init; }

    /// <summary>SHA-256 of its bytes.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Which inputs it was audited with, and what was written of it.</summary>
    public required RecordingStamp Stamp { get; init; }

    /// <summary>The format as people call it.</summary>
    public required string Format { get; init; }

    /// <summary>Its length in seconds.</summary>
    public required double DurationS { get; init; }

    /// <summary>The participant, or null.</summary>
    public string? Participant { get; init; }

    /// <summary>The participant's group, or null.</summary>
    public string? Group { get; init; }

    /// <summary>Its channels in file order.</summary>
    public required ImmutableArray<ChannelDigest> Channels { get; init; }

    /// <summary>Conditions with fewer usable trials than they need, with the channel: <c>cheek: smile 5 of 8</c> is one of them.</summary>
    public required ImmutableArray<ConditionCount> TooFew { get; init; }

    /// <summary>Codes of the information about it, each once.</summary>
    public ImmutableArray<string> Information { get; init; } = [];

    /// <summary>What was odd about the file, and which decisions need another look.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];

    /// <summary>The decisions about it; null when there are none, and of a run that was written before.</summary>
    internal RecordingDecisions? Decisions { get; init; }

    /// <summary>Whether a decision is in force about one of its channels or trials.</summary>
    public bool IsDecided => Channels.Any(channel => channel.IsDecided);

    /// <summary>Its channels by final verdict.</summary>
    public VerdictCounts ChannelCounts => VerdictCounts.Of(Channels.Select(channel => channel.Verdict));

    /// <summary>Its trials by final verdict, each counted once a channel.</summary>
    public VerdictCounts TrialCounts => VerdictCounts.Sum(Channels.Select(channel => channel.Trials));

    /// <summary>The worst final verdict of its channels.</summary>
    public Grade Worst => Channels.IsEmpty ? Grade.Pass : Channels.Max(channel => channel.Verdict);

    /// <summary>The worst computed verdict of its channels.</summary>
    public Grade ComputedWorst => Channels.IsEmpty ? Grade.Pass : Channels.Max(channel => channel.Computed);

    /// <summary>Reasons of the channels that did not pass, the commonest first.</summary>
    public ImmutableArray<string> Reasons =>
    [
        .. Channels.Where(channel => channel.Verdict != Grade.Pass)
            .SelectMany(channel => channel.Reasons)
            .GroupBy(reason => reason, StringComparer.Ordinal)
            .OrderByDescending(group => group.Count())
            .Select(group => group.Key),
    ];

    /// <summary>The digest of a result.</summary>
    public static RecordingDigest Of(RecordingResult recording, RecordingStamp stamp) => new()
    {
        Id = recording.Id,
        Path = recording.Path,
        Sha256 = recording.Sha256,
        Stamp = stamp,
        Format = recording.Format,
        DurationS = recording.DurationS,
        Participant = recording.Participant,
        Group = recording.Group,
        Channels = [.. recording.Channels.Select(channel => ChannelDigest.Of(recording, channel))],
        TooFew = [.. ConditionCounts.Of(recording).Where(count => !count.Enough)],
        Information = [.. recording.Information.Select(finding => finding.Reason).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
        Warnings = [.. recording.Warnings, .. recording.Decisions?.Warnings ?? []],
        Decisions = recording.Decisions,
    };

    /// <summary>By the worst channel, then by number of rejected channels, then by share of rejected trials, then by id.</summary>
    public static ImmutableArray<RecordingDigest> WorstFirst(IEnumerable<RecordingDigest> recordings) =>
    [
        .. recordings
            .OrderByDescending(recording => recording.Worst)
            .ThenByDescending(recording => recording.ChannelCounts.Reject)
            .ThenByDescending(recording => recording.Channels.Sum(channel => channel.Trials.Total == 0 ? 0 : (double)channel.Trials.Reject / channel.Trials.Total))
            .ThenBy(recording => recording.Id, StringComparer.Ordinal),
    ];
}
