using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;

namespace ChannelAudit.Synthesis;

/// <summary>Writes hours of recording in seconds, block by block: each channel repeats parts of a minute of made noise.</summary>
/// <remarks>For speed and memory, not for truth: no faults and no bridges; levels, offsets and rails are those of the plan.</remarks>
public static class LongRecording
{
    /// <summary>Writes EDF+ with the trials as annotations.</summary>
    /// <param name="plan">The plan; its faults are left out.</param>
    /// <param name="path">Where to; replaced when it exists.</param>
    /// <exception cref="ArgumentException">When the rate or the duration is not a whole number.</exception>
    public static void Write(SessionPlan plan, string path)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Rate.Denominator != 1 || decimal.Truncate(plan.DurationS) != plan.DurationS)
        {
            throw new ArgumentException("A long recording has whole seconds and a whole rate.", nameof(plan));
        }

        SessionPlan minute = plan with { DurationS = 60, Trials = [], Faults = [] };
        MadeRecording made = MadeRecording.Make(minute with { Sites = [.. plan.Sites.Select(WithoutMuscle)] });
        ImmutableArray<EdfSignalContent> signals =
        [
            .. plan.Sites.Select((_, i) => EdfFiles.Signal(made.Channels[i], 1, new LongSignal(plan, made, i).Fill)),
        ];
        EdfWriter.Write(path, new EdfContent(signals, (int)plan.DurationS)
        {
            Is24Bit = plan.Amplifier.Bits > 16,
            Annotations = EdfFiles.Annotations(plan),
        });
    }

    private static SitePlan WithoutMuscle(SitePlan site) => site with { RestUv = 0 };
}
