using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Results;

/// <summary>Everything known about one recording: <c>result.json</c> holds it, and every table and figure is made from it.</summary>
public sealed record RecordingResult
{
    /// <summary>The recording's id: path below the given root without extension, <c>/</c> written <c>+</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Path relative to the given root, with <c>/</c>.</summary>
    public required string Path { get; init; }

    /// <summary>SHA-256 of the file's bytes, lower-case hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>The format as people call it.</summary>
    public required string Format { get; init; }

    /// <summary>First stored sample to the end of the last one, in seconds.</summary>
    public required double DurationS { get; init; }

    /// <summary>Time inside it of which nothing is stored, in order.</summary>
    public ImmutableArray<RecordedGap> Gaps { get; init; } = [];

    /// <summary>The participant, when the path or the setup says who; null otherwise (never from a file header).</summary>
    public string? Participant { get; init; }

    /// <summary>The participant's group, when the path, the setup or the data set says it; null otherwise.</summary>
    public string? Group { get; init; }

    /// <summary>The mains frequency used.</summary>
    public required MainsResult Mains { get; init; }

    /// <summary>The scoring filter that findings were judged behind, in words; null when the setup states none.</summary>
    public string? Scoring { get; init; }

    /// <summary>Where trials came from: <c>annotations</c>, <c>events</c>, <c>trigger</c> or <c>blocks</c>.</summary>
    public required string TrialsFrom { get; init; }

    /// <summary>All trials by number.</summary>
    public required ImmutableArray<Trial> Trials { get; init; }

    /// <summary>One entry an audited channel, in file order.</summary>
    public required ImmutableArray<ChannelResult> Channels { get; init; }

    /// <summary>Channels that are listed but not audited: label and why.</summary>
    public ImmutableArray<SkippedChannel> Skipped { get; init; } = [];

    /// <summary>One entry a pair of audited channels.</summary>
    public required ImmutableArray<PairResult> Pairs { get; init; }

    /// <summary>Things worth knowing that never change a verdict.</summary>
    public ImmutableArray<Finding> Information { get; init; } = [];

    /// <summary>What was odd about the file.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];

    /// <summary>What the impedance readings say, graded apart from every verdict; null when no readings were given.</summary>
    public ImpedanceReport? Impedance { get; init; }

    /// <summary>How many verdicts hang on the limits: the limits in force first, then all limits moved together, then those of one reason at a time. Null in
    /// results of versions that did not count it.</summary>
    public ImmutableArray<MovedLimits>? Sensitivity { get; init; }

    /// <summary>Usable trials a condition needs.</summary>
    public int MinimumTrials { get; init; } = 8;

    /// <summary>Conditions that the protocol of the setup expects, whether or not a trial has them; empty without a protocol.</summary>
    public ImmutableArray<string> ExpectedConditions { get; init; } = [];

    /// <summary>What persons decided about it, beside the computed verdicts; null when nobody did. Part of no file.</summary>
    public RecordingDecisions? Decisions { get; init; }
}
