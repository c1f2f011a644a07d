using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Demo;

/// <summary>What every participant of the demo's study did: rest, three contractions, 24 photographs of three kinds of places, rest.</summary>
internal static class DemoProtocol
{
    /// <summary>The trials: 1 rest, 2 to 4 contractions of cheek, brow and eye, 5 to 28 photographs, 29 rest; 174 s in all.</summary>
    public static ImmutableArray<PlannedTrial> Trials { get; } = new Protocol
    {
        Conditions = [Harbour, "meadow", "orchard"],
        ScoredTrials = 24,
        PauseS = 2,
        RestS = 15,
        TaskS = 4,
        Answers =
        [
            [new SiteActivity("brow", 7)],
            [new SiteActivity("cheek", 9), new SiteActivity("eye", 5)],
            [new SiteActivity("cheek", 5), new SiteActivity("eye", 8)],
        ],
    }.TrialsFor(SitePlan.Face);

    /// <summary>The condition in which water glitters.</summary>
    public const string Harbour = "harbour";

    /// <summary>A trial by the number that the tables give it.</summary>
    /// <param name="number">From 1.</param>
    public static PlannedTrial Trial(int number) => Trials[number - 1];

    /// <summary>The trials when the session was held up.</summary>
    /// <param name="number">The first trial that comes later.</param>
    /// <param name="seconds">By how much.</param>
    public static ImmutableArray<PlannedTrial> DelayedFrom(int number, decimal seconds) =>
        [.. Trials.Select((trial, i) => i + 1 < number ? trial : trial with { OnsetS = trial.OnsetS + seconds })];

    /// <summary>The trials when someone's eye answers more strongly than others' do.</summary>
    /// <param name="squeezeUv">The asked contraction of the eye, in µV rms.</param>
    /// <param name="harbourUv">The squint at harbours, in µV rms.</param>
    public static ImmutableArray<PlannedTrial> WithStrongEye(double squeezeUv, double harbourUv) =>
    [
        .. Trials.Select((trial, i) =>
            i + 1 == EyeTask ? trial with { Activity = [new SiteActivity("eye", squeezeUv)] }
            : string.Equals(trial.Label, Harbour, StringComparison.Ordinal) ? trial with { Activity = [.. trial.Activity, new SiteActivity("eye", harbourUv)] }
            : trial),
    ];

    private const int EyeTask = 4;
}
