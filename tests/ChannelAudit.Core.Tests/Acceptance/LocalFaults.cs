using System.Collections.Concurrent;
using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>
/// Sessions with a fault of its own in almost every trial, at 1.5 and at 0.7 times its reject limit, all confusers present. Trials: 1 rest,
/// 2 to 4 tasks, 5 to 14 scored, 15 rest.
/// </summary>
/// <remarks>
/// cheek: 5 to 8 share and run at the stated rail, 13 and 14 a falling baseline; brow: 5 to 8 held and toggling, 11 and 12 a rising baseline;
/// eye: 5 to 8 share and run at a rail that the file does not state; all: 9 and 10 a pause, 15 runs past the end.
/// </remarks>
internal static class LocalFaults
{
    private static readonly ConcurrentDictionary<int, Lazy<RecordingResult>> Results = new();

    /// <summary>The sessions: two of each rate.</summary>
    public static ImmutableArray<int> All { get; } = [.. Enumerable.Range(0, 2 * MadeAudit.Rates.Length)];

    /// <summary>The audit of a session; made once.</summary>
    public static RecordingResult Of(int number) => Results.GetOrAdd(number, key => new Lazy<RecordingResult>(() => MadeAudit.Of(Plan(key)))).Value;

    /// <summary>Whether the last trial of a session runs past the end by 75 ms; else by 35 ms.</summary>
    public static bool EndsFarTooEarly(int number) => number < MadeAudit.Rates.Length;

    private static SessionPlan Plan(int number)
    {
        Rational rate = MadeAudit.Rates[number % MadeAudit.Rates.Length];
        SessionPlan plan = MadeAudit.Session(300 + (ulong)number, rate, 10);
        FaultSpan In(int trial, decimal seconds) => new(plan.Trials[trial - 1].OnsetS + 1, plan.Trials[trial - 1].OnsetS + 1 + seconds);
        FaultSpan Around(int trial) => new(plan.Trials[trial - 1].OnsetS - 1, plan.Trials[trial - 1].EndS + 1);
        Fault Share(string site, int trial, double percent, double? railUv) =>
            new RailBlocks(site, percent, 2) { Span = FaultSpan.Of(plan.Trials[trial - 1]), RailUv = railUv };
        Fault Run(string site, int trial, double ms, double? railUv)
        {
            int samples = (int)Math.Round(ms * rate.Value / 1000);
            return new RailBlocks(site, 100 * samples / (3 * rate.Value), samples) { Span = FaultSpan.Of(plan.Trials[trial - 1]), RailUv = railUv };
        }

        return MadeAudit.WithConfusersAndMotion(
            plan with { DurationS = plan.Trials[^1].EndS - (EndsFarTooEarly(number) ? 0.075M : 0.035M) },
            Share("cheek", 5, 1.5, null),
            Share("cheek", 6, 0.7, null),
            Run("cheek", 7, 15, null),
            Run("cheek", 8, 7, null),
            Share("eye", 5, 1.5, 400),
            Share("eye", 6, 0.7, 400),
            Run("eye", 7, 15, 400),
            Run("eye", 8, 7, 400),
            new Flatline("brow") { Span = In(5, 0.3M) },
            new Flatline("brow") { Span = In(6, 0.14M) },
            new Flatline("brow") { Span = In(7, 0.3M), Toggles = true },
            new Flatline("brow") { Span = In(8, 0.14M), Toggles = true },
            new RecordingGap { Span = In(9, 0.075M) },
            new RecordingGap { Span = In(10, 0.035M) },
            new Drift("brow", 9000) { Span = Around(11) },
            new Drift("brow", 4200) { Span = Around(12) },
            new Drift("cheek", -9000) { Span = Around(13) },
            new Drift("cheek", -4200) { Span = Around(14) });
    }
}
