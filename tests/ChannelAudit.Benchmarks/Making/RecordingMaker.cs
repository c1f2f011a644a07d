using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Benchmarks.Making;

/// <summary>Writes the recordings that speed is measured on: the session of <see cref="BenchmarkSession"/>, cut short or repeated, on as many channels as asked for.</summary>
internal static class RecordingMaker
{
    /// <summary>Writes EDF+ record by record, whatever the length.</summary>
    /// <param name="path">Where to.</param>
    /// <param name="seconds">Length.</param>
    /// <param name="channels">Channels; the first four are those of the session.</param>
    /// <param name="seed">Decides every sample.</param>
    /// <param name="everyS">Seconds from one event to the next at least.</param>
    public static void Write(string path, int seconds, int channels, ulong seed, int everyS = 0)
    {
        SessionPlan session = BenchmarkSession.Plan;
        LongRecording.Write(
            session with
            {
                Seed = seed,
                DurationS = seconds,
                Sites = [.. Enumerable.Range(0, channels).Select(Site)],
                Trials = [.. Sparse(Trials(session).TakeWhile(trial => trial.EndS <= seconds), everyS)],
            },
            path);
    }

    private static SitePlan Site(int index)
    {
        ImmutableArray<SitePlan> sites = BenchmarkSession.Plan.Sites;
        if (index < sites.Length)
        {
            return sites[index];
        }

        string name = string.Create(CultureInfo.InvariantCulture, $"site{index + 1}");
        return new SitePlan { Name = name, Label = "EMG " + name };
    }

    private static IEnumerable<PlannedTrial> Sparse(IEnumerable<PlannedTrial> trials, int everyS)
    {
        decimal next = 0;
        foreach (PlannedTrial trial in trials.Where(trial => trial.OnsetS >= next))
        {
            next = trial.OnsetS + everyS;
            yield return trial;
        }
    }

    private static IEnumerable<PlannedTrial> Trials(SessionPlan session)
    {
        for (decimal hour = 0; ; hour += session.DurationS)
        {
            foreach (PlannedTrial trial in session.Trials)
            {
                yield return trial with { OnsetS = hour + trial.OnsetS };
            }
        }
    }
}
