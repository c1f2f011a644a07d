using System.Collections.Immutable;
using ChannelAudit.Segments;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis;

/// <summary>The session that speed is measured on: an hour, four channels at 2000 Hz, 360 trials of 3 to 8 s.</summary>
public static class BenchmarkSession
{
    private const int Trials = 360;

    /// <summary>Seconds from one onset to the next.</summary>
    private const decimal SlotS = 10;

    /// <summary>The plan; <see cref="LongRecording"/> writes it.</summary>
    public static SessionPlan Plan { get; } = new()
    {
        Seed = 3600,
        DurationS = Trials * SlotS,
        Sites = [.. SitePlan.Face, new SitePlan { Name = "lip", Label = "EMG lip", Muscle = "orbicularis oris", Task = "purse lips" }],
        Trials = TrialsOfAnHour(),
    };

    private static ImmutableArray<PlannedTrial> TrialsOfAnHour()
    {
        Pcg32 random = NoiseStream.Of(3600, "trials");
        return [.. Enumerable.Range(0, Trials).Select(i => Trial(i, 3 + ((int)(random.NextDouble() * 51) / 10M)))];
    }

    /// <summary>Rest first and once a minute, then each contraction every quarter of an hour, else a condition.</summary>
    private static PlannedTrial Trial(int number, decimal durationS)
    {
        string[] tasks = ["raise lip corner", "draw brows together", "close eyes firmly", "purse lips"];
        string[] sites = ["cheek", "brow", "eye", "lip"];
        int inQuarter = number % (Trials / 4);
        (string label, TrialRole role, ImmutableArray<SiteActivity> activity) = inQuarter switch
        {
            0 => ("rest", TrialRole.Rest, []),
            >= 1 and <= 4 => (tasks[inQuarter - 1], TrialRole.Task, [new SiteActivity(sites[inQuarter - 1], 25)]),
            _ when inQuarter % 6 == 0 => ("rest", TrialRole.Rest, []),
            _ when inQuarter % 2 == 0 => ("harbour", TrialRole.Scored, [new SiteActivity("brow", 6)]),
            _ => ("meadow", TrialRole.Scored, ImmutableArray.Create(new SiteActivity("cheek", 8), new SiteActivity("eye", 4))),
        };
        return new PlannedTrial { OnsetS = (number * SlotS) + 1, DurationS = durationS, Label = label, Role = role, Activity = activity };
    }
}
