using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Segments;

/// <summary>Makes trials of events.</summary>
/// <remarks>
/// Every event with a duration is a trial, rest and tasks included, numbered from 1 by onset, then file order. A scoring window makes trials of instants too.
/// Blocks have neither window nor baseline. Labels are compared exactly, blanks around them left out. Odd trials are kept: what is wrong with them is for the
/// measures to find.
/// </remarks>
public static class TrialPlan
{
    // Windows that slide over a recording share a moment among some; where so many do, the table lists samples, or times in another unit. Engineering judgement.
    private const double MostOverlap = 50;

    /// <summary>Makes the trials of a recording.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="events">The chosen events.</param>
    /// <param name="setup">The study's setup: window, baseline, labels of rest and tasks.</param>
    /// <exception cref="ChannelAuditException">When an event has a negative duration, or trials together are fifty times as long as the recording; usage fault.</exception>
    public static TrialSet Of(Recording recording, TrialEvents events, StudySetup setup)
    {
        RefuseNegative(events);
        TrialSetup rules = events.Source == TrialSource.Blocks ? new TrialSetup { Minimum = setup.Trials.Minimum } : setup.Trials;
        HashSet<string> rest = new(setup.Trials.Rest.Select(label => label.Trim()), StringComparer.Ordinal);
        HashSet<string> tasks = new(setup.Sites.Select(site => site.Task?.Trim()).OfType<string>(), StringComparer.Ordinal);
        ImmutableArray<RecordedEvent> chosen = [.. events.Events.Where(one => IsTrial(one, rules)).OrderBy(one => one.OnsetS)];
        ImmutableArray<Trial> trials = [.. chosen.Select((one, index) => Make(one, index + 1, rules, Role(one.Label?.Trim(), rest, tasks)))];
        RefuseHeap(recording, events, trials);
        return new TrialSet(events.Source, trials, [.. events.Warnings, .. TrialWarnings.About(recording, events, trials)]) { Doubles = events.Doubles };
    }

    /// <summary>Whether an event becomes a trial: its window has a length.</summary>
    internal static bool IsTrial(RecordedEvent one, TrialSetup rules)
    {
        (decimal from, decimal to) = Window(one, rules);
        return to > from;
    }

    /// <summary>The warning that a source has events, none of which becomes a trial.</summary>
    internal static Warning NoDuration(TrialEvents events) => new(events.File, "events", string.Create(
        CultureInfo.InvariantCulture,
        $"no trial: {events.Events.Length} {(events.Events.Length == 1 ? "event" : "events")}, none with a duration; set [trials] window in the setup file to make trials of instants"));

    private static (decimal From, decimal To) Window(RecordedEvent one, TrialSetup rules) =>
        (one.OnsetS + (rules.WindowFromS ?? 0), one.OnsetS + (rules.WindowToS ?? one.DurationS ?? 0));

    private static Trial Make(RecordedEvent one, int number, TrialSetup rules, TrialRole role)
    {
        (decimal from, decimal to) = Window(one, rules);
        return new Trial
        {
            Number = number,
            Label = one.Label?.Trim(),
            Role = role,
            OnsetS = one.OnsetS,
            DurationS = one.DurationS ?? 0,
            WindowFromS = from,
            WindowToS = to,
            BaselineFromS = rules.BaselineS is > 0 and { } length ? one.OnsetS - length : null,
        };
    }

    private static TrialRole Role(string? label, HashSet<string> rest, HashSet<string> tasks) =>
        label is null ? TrialRole.Scored : rest.Contains(label) ? TrialRole.Rest : tasks.Contains(label) ? TrialRole.Task : TrialRole.Scored;

    private static void RefuseHeap(Recording recording, TrialEvents events, ImmutableArray<Trial> trials)
    {
        double totalS = trials.Sum(trial => Math.Max(0, Math.Min((double)trial.WindowToS, recording.DurationS) - Math.Max((double)trial.WindowFromS, 0)));
        if (totalS > MostOverlap * recording.DurationS)
        {
            throw TrialErrors.Heap(events.File, trials.Length, totalS / recording.DurationS);
        }
    }

    private static void RefuseNegative(TrialEvents events)
    {
        for (int i = 0; i < events.Events.Length; i++)
        {
            if (events.Events[i].DurationS is < 0 and { } duration)
            {
                throw TableErrors.NegativeDuration(events.File, "event " + (i + 1).ToString(CultureInfo.InvariantCulture), duration);
            }
        }
    }
}
