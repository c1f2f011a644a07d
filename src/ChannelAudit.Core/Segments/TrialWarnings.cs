using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Segments;

/// <summary>Says what is odd about trials that are kept all the same.</summary>
internal static class TrialWarnings
{
    private const int Shown = 5;

    /// <summary>The warnings, in order of kind.</summary>
    public static ImmutableArray<Warning> About(Recording recording, TrialEvents events, ImmutableArray<Trial> trials)
    {
        ImmutableArray<Warning>.Builder warnings = ImmutableArray.CreateBuilder<Warning>();
        if (trials.IsEmpty && !events.Events.IsEmpty && events.Source != TrialSource.Blocks)
        {
            warnings.Add(TrialPlan.NoDuration(events));
        }

        // Durations are binary fractions, times decimal ones: a millionth of a second more or less is no difference.
        decimal end = (decimal)recording.DurationS - 0.000_001m;
        decimal past = end + 0.000_002m;
        Add(warnings, events.File, "starts before the first sample", [.. trials.Where(trial => trial.WindowFromS < 0)]);
        Add(warnings, events.File, "starts after the last sample", [.. trials.Where(trial => trial.WindowFromS >= end)]);
        Add(warnings, events.File, "runs past the end of the recording", [.. trials.Where(trial => trial.WindowFromS < end && trial.WindowToS > past)]);
        Add(warnings, events.File, "has a baseline that starts before the first sample", [.. trials.Where(trial => trial.BaselineFromS < 0 && trial.WindowFromS >= 0)]);
        AddPairs(warnings, events.File, trials);
        return warnings.ToImmutable();
    }

    private static void Add(ImmutableArray<Warning>.Builder warnings, string file, string what, ImmutableArray<Trial> trials)
    {
        foreach (Trial trial in trials.Take(Shown))
        {
            warnings.Add(new Warning(file, Place(trial), what));
        }

        if (trials.Length > Shown)
        {
            warnings.Add(new Warning(file, "events", string.Create(CultureInfo.InvariantCulture, $"{trials.Length - Shown} more trials: {what}")));
        }
    }

    private static void AddPairs(ImmutableArray<Warning>.Builder warnings, string file, ImmutableArray<Trial> trials)
    {
        int found = 0;
        Trial? furthest = null;
        foreach (Trial trial in trials.OrderBy(trial => trial.WindowFromS).ThenBy(trial => trial.Number))
        {
            if (furthest is not null && trial.WindowFromS < furthest.WindowToS && ++found <= Shown)
            {
                bool same = trial.OnsetS == furthest.OnsetS && trial.DurationS == furthest.DurationS && string.Equals(trial.Label, furthest.Label, StringComparison.Ordinal);
                warnings.Add(new Warning(file, Place(trial), $"{(same ? "repeats" : "overlaps")} trial {furthest.Number.ToString(CultureInfo.InvariantCulture)}"));
            }

            furthest = furthest is null || trial.WindowToS > furthest.WindowToS ? trial : furthest;
        }

        if (found > Shown)
        {
            warnings.Add(new Warning(file, "events", string.Create(CultureInfo.InvariantCulture, $"{found - Shown} more trials overlap or repeat others")));
        }
    }

    private static string Place(Trial trial) => "trial " + trial.Number.ToString(CultureInfo.InvariantCulture);
}
