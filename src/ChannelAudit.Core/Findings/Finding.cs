using System.Collections.Immutable;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings;

/// <summary>Measures beyond a criterion over a stretch of time, with the evidence and the likely cause.</summary>
public sealed record Finding
{
    /// <summary>What stands between two clauses of <see cref="Text"/>.</summary>
    public const string ClauseEnd = "; ";

    /// <summary>The reason code.</summary>
    public required string Reason { get; init; }

    /// <summary>Questionable or reject; pass for information that never changes a verdict.</summary>
    public required Grade Grade { get; init; }

    /// <summary>The names of the channels that carry it: one, or the two of a pair.</summary>
    public required ImmutableArray<string> Channels { get; init; }

    /// <summary>The trial it was found in, or null for the whole recording.</summary>
    public int? Trial { get; init; }

    /// <summary>Whether it was found in the trial's baseline rather than in its window.</summary>
    public bool InBaseline { get; init; }

    /// <summary>Whether quiet stretches around an active trial said it, not the trial's own value.</summary>
    public bool FromQuietStretches { get; init; }

    /// <summary>Start of the stretch, seconds from the first stored sample.</summary>
    public required double FromS { get; init; }

    /// <summary>End of the stretch.</summary>
    public required double ToS { get; init; }

    /// <summary>The numbers that passed their limits.</summary>
    public required ImmutableArray<Evidence> Evidence { get; init; }

    /// <summary>What it does to the score; null for reasons that say nothing of the amplitude.</summary>
    public ScoreEffect? Effect { get; init; }

    /// <summary>What was seen, one sentence a technician understands.</summary>
    public required string Text { get; init; }

    /// <summary>The first clause of <see cref="Text"/>: what was seen, without what follows from it.</summary>
    public string Seen => Text.Split(ClauseEnd)[0];

    /// <summary>Whether it only counts bad trials: its number is a share of trials, not the size of what is wrong with them.</summary>
    public bool CountsTrials => Evidence.Any(one => one.Measure is BadTrialShare.Share or BadTrialShare.LowShare);

    /// <summary>The likely cause, one sentence.</summary>
    public required string Cause { get; init; }
}
