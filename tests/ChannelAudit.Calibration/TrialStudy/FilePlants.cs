using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>What went wrong with labels, events and files.</summary>
internal static class FilePlants
{
    /// <summary>All of them.</summary>
    internal static ImmutableArray<Plant> All { get; } =
    [
        new("P07/session1", "cheek,brow", "leads exchanged; noticed, and said in the setup: nothing to be found") { Plan = Exchanged },
        new("P40/session2", "cheek,brow", "leads exchanged; nobody noticed") { Plan = Exchanged },
        new("P19/session1", "all", "1000 Hz, low-pass at 400 Hz; mains of 60 Hz said in the setup") { Plan = Elsewhere },
        new("P19/session2", "all", "1000 Hz, low-pass at 400 Hz; mains of 60 Hz said in the setup") { Plan = Elsewhere },
        new("P18/session1", "all", "high-passed at 20 Hz and stored rectified")
        {
            // Without the high-pass the offset would keep most samples on one side of zero, and rectifying would change nothing.
            Plan = plan => plan with { Amplifier = plan.Amplifier with { HighpassHz = 20 } }, Stored = new StoredChange { IsRectified = true },
        },
        new("P21/session2", "all", "stored a thousand times too large") { Stored = new StoredChange { Gain = 1000 } },
        new("P31/session2", "all", "file cut off at 0.47 of its length") { Stored = new StoredChange { Kept = 0.47 }, Trials = "from 49 or so on" },
        new("P35/session2", "all", "no recording: first 4096 bytes are zero") { Stored = new StoredChange { Zeroed = 4096 } },
        new("P34/session1", "all", "the signal and events of P32/session1, converted in other steps")
        {
            Plan = _ => new HarbourSession(32, 1).Plan with { Amplifier = new AmplifierPlan { StepUv = 0.25, LowpassHz = 500 } },
        },
        new("P37/session1", "all", "five events are missing")
        {
            Trials = "23,24,58,77,90",
            Stored = new StoredChange { Events = trials => trials.Where((_, i) => i + 1 is not (23 or 24 or 58 or 77 or 90)) },
        },
        new("P39/session2", "all", "three events stand there twice, 0.1 s apart")
        {
            Trials = "15,52,83",
            Stored = new StoredChange
            {
                Events = trials => trials.SelectMany((trial, i) =>
                    i + 1 is 15 or 52 or 83 ? new[] { trial, trial with { OnsetS = trial.OnsetS + 0.1M } } : [trial]),
            },
        },
        new("P22/session1", "all", "the events are those of P01/session1") { Stored = new StoredChange { Events = _ => new HarbourSession(1, 1).Trials } },
        new("P27/session2", "all", "a name and a birth date in the header")
        {
            Trials = "none", Stored = new StoredChange { Patient = "P27 F 02-MAY-1991 Invented_Name" },
        },
    ];

    private static SessionPlan Exchanged(SessionPlan plan) => plan with
    {
        Sites = [plan.Sites[0] with { Label = plan.Sites[1].Label }, plan.Sites[1] with { Label = plan.Sites[0].Label }, plan.Sites[2]],
    };

    private static SessionPlan Elsewhere(SessionPlan plan) => plan with
    {
        Rate = new Rational(1000, 1),
        Amplifier = plan.Amplifier with { LowpassHz = 400 },
        Faults = [.. plan.Faults.Select(fault => fault is Synthesis.Faults.MainsPickup mains ? mains with { Hz = 60 } : fault)],
    };
}
