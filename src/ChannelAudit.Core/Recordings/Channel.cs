using System.Collections.Immutable;

namespace ChannelAudit.Recordings;

/// <summary>One signal of a recording.</summary>
public sealed record Channel
{
    /// <summary>Position in <see cref="Recording.Channels"/>.</summary>
    public required int Index { get; init; }

    /// <summary>The label, unique in the recording: the second <c>EMG</c> is <c>EMG#2</c>.</summary>
    public required string Label { get; init; }

    /// <summary>The label as it stands in the file.</summary>
    public required string RawLabel { get; init; }

    /// <summary>Why the channel is listed but not audited (status, trigger, annotation, no calibration, no voltage), or null when it is audited.</summary>
    public string? NotAudited { get; init; }

    /// <summary>The unit as it stands in the file.</summary>
    public string FileUnit { get; init; } = string.Empty;

    /// <summary>Whether samples are microvolts; false for raw codes, for which only what needs no unit is assessed.</summary>
    public bool IsMicrovolts { get; init; } = true;

    /// <summary>Samples per second.</summary>
    public required Rational Rate { get; init; }

    /// <summary>Why the samples are no raw signal (rectified, smoothed), so that no spectrum of theirs means anything; null when they are.</summary>
    public string? NotRaw { get; init; }

    /// <summary>Whether they are an envelope or an integral, whose waves are so slow that it stands still by nature.</summary>
    public bool IsSmoothed { get; init; }

    /// <summary>Why the stated unit cannot be believed; <see cref="IsMicrovolts"/> is false then. Null when it can.</summary>
    public string? UnitDoubt { get; init; }

    /// <summary>The smallest step between two values, in the unit of the samples.</summary>
    public required double Step { get; init; }

    /// <summary>The lowest value the file can hold, in the unit of the samples; null when the format has no such limit.</summary>
    public double? LowerRail { get; init; }

    /// <summary>The highest value the file can hold, in the unit of the samples; null when the format has no such limit.</summary>
    public double? UpperRail { get; init; }

    /// <summary>The filters that the file claims were applied.</summary>
    public Prefilter Prefilter { get; init; } = Prefilter.Unknown;

    /// <summary>The unbroken stretches in order of time; gaps and missing samples lie between them.</summary>
    public required ImmutableArray<Stretch> Stretches { get; init; }

    /// <summary>Samples from time zero to the end of the last stretch, gaps included.</summary>
    public long TimelineLength => Stretches.IsEmpty ? 0 : Stretches[^1].End;

    /// <summary>Samples stored.</summary>
    public long StoredLength => Stretches.Sum(stretch => stretch.Length);
}
