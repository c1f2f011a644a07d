using System.Collections.Immutable;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis;

/// <summary>A short session of an invented study to try the tool on: much of it is good, and each fault has a place.</summary>
/// <remarks>
/// Three sites, 187 s at 2000 Hz, coupled to DC; rest, three contractions, 16 scored trials of two conditions, rest. Mains on the
/// cheek in the last third; one squeeze of the eye that meets the converter's rail; 0.8 s without signal and a stretch of quick
/// drift at the brow; a whisper of mains everywhere that is no fault.
/// </remarks>
public static class DemoSession
{
    private const ulong Seed = 20260312;

    /// <summary>Position among the trials of the squeeze that meets the rail.</summary>
    private const int SqueezedTrial = 9;

    /// <summary>The plan.</summary>
    public static SessionPlan Plan { get; } = Make();

    /// <summary>Makes the session and writes <c>session.edf</c> and <c>setup.toml</c> into a folder.</summary>
    /// <param name="folder">An existing folder.</param>
    /// <returns>What was made.</returns>
    /// <exception cref="IOException">When a file cannot be written.</exception>
    public static MadeRecording Write(string folder)
    {
        MadeRecording made = MadeRecording.Make(Plan);
        EdfFiles.Write(made, Path.Combine(folder, "session.edf"));
        File.WriteAllText(Path.Combine(folder, "setup.toml"), SetupText.Of(Plan));
        return made;
    }

    private static SessionPlan Make()
    {
        SessionPlan plan = new Protocol
        {
            Answers =
            [
                [new SiteActivity("brow", 7)],
                [new SiteActivity("cheek", 9), new SiteActivity("eye", 5)],
            ],
        }.Plan(Seed);
        ImmutableArray<PlannedTrial> trials = plan.Trials.SetItem(
            SqueezedTrial, plan.Trials[SqueezedTrial] with { Activity = [new SiteActivity("eye", 110)] });
        return plan with { Trials = trials, Faults = FaultsIn(trials) };
    }

    private static ImmutableArray<Fault> FaultsIn(ImmutableArray<PlannedTrial> trials) =>
    [
        new MainsPickup(["cheek", "brow", "eye"], 0.3) { WanderHz = 0.03 },
        new MainsPickup(["cheek"], 8) { WanderHz = 0.03, Span = new FaultSpan(124, null) },
        new HeaderRail("eye", 200),
        new Flatline("brow") { Span = new FaultSpan(trials[13].OnsetS + 1, trials[13].OnsetS + 1.8M) },
        new Drift("brow", 900) { Span = new FaultSpan(trials[6].OnsetS - 1, trials[7].EndS + 1) },
    ];
}
