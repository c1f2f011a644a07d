using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Detectability;

/// <summary>Every fault that can be planted in somebody's own recording.</summary>
internal static class PlantKinds
{
    // Long enough for three quiet seconds on each side, which speak for an active trial.
    private const double SteadyMarginS = 4;
    private const double MovementMarginS = 1;
    private const double ReturnS = 10;
    private const double Swing = 0.99;

    private static readonly ImmutableArray<double> Tones = [0.3, 0.6, 1, 2, 3, 5, 8, 12, 20];
    private static readonly ImmutableArray<double> Ratios = [10, 5, 2, 1, 0.5, 0.2, 0];

    /// <summary>All of them, in the order in which they are shown.</summary>
    public static ImmutableArray<PlantKind> All { get; } =
    [
        Steady("line-noise", ReasonCode.LineNoise, "mains in one channel", "µV rms", Tones, (host, place, size, seed) => [PlantEdits.Mains(host, place, size, seed)]),
        Steady("narrow-band", ReasonCode.NarrowBand, "a steady tone that is not mains", "µV rms", Tones, (host, place, size, seed) => [PlantEdits.Tone(host, place, size, ToneHz(host), [1], seed)])
            with { WhyNot = host => ToneHz(host) > 0 ? null : "the rate is too low for a tone beside the mains" },
        Steady("noise-floor", ReasonCode.NoiseFloor, "white noise of a poor contact", "µV rms, 20 to 450 Hz", [1, 2, 3, 4, 6, 9, 13, 20],
            (host, place, size, seed) => [PlantEdits.White(host, place, size, seed)]),
        Joint("bridge-two", "two sites joined at two places", 2),
        Joint("bridge-one", "two sites joined at one place", 1),
        Clipped(),
        Local("flatline", ReasonCode.Flatline, "a channel that holds one value", "ms", [10, 15, 25, 40, 80, 150, 220, 300, 600], 0,
            (host, place, size, seed) => [PlantEdits.Held(host, place, size, seed)]) with { NeedsMicrovolts = false },
        Local("dropout", ReasonCode.Dropout, "samples that are not there", "ms", [1, 5, 20, 40, 60, 150, 300], 0,
            (host, place, size, seed) => [PlantEdits.Lost(host, place, size, seed)]) with { NeedsMicrovolts = false },
        Drift(),
        Local("low-frequency", ReasonCode.LowFrequency, "leads that sway during a trial", "µV rms, 0.5 to 8 Hz", [3, 6, 10, 15, 25, 40, 70, 120, 250], MovementMarginS,
            (host, place, size, seed) => [PlantEdits.Sway(host, place, size, seed)]),
        Local("pops", ReasonCode.Pops, "one spike of 2 ms", "times the channel's swing", [1, 1.5, 2, 3, 5, 8], 0,
            (host, place, size, seed) => [PlantEdits.Spike(host, place, size * host.Of(place.Channel).SwingAt(Swing), seed)]) with { NeedsMicrovolts = false },
        Weak(),
    ];

    /// <summary>Reasons that have no size to plant, each with the cause.</summary>
    public static ImmutableArray<NotAssessed> NotPlanted { get; } =
    [
        new(ReasonCode.LeadSwap, "exchanged leads have no size: setup and tasks decide"),
        new(ReasonCode.UnusableInput, "what makes a whole file unusable has no size"),
    ];

    private static PlantKind Steady(
        string name, string reason, string title, string unit, ImmutableArray<double> sizes, Func<PlantHost, PlantPlace, double, ulong, IEnumerable<PlantEdit>> edits) =>
        Local(name, reason, title, unit, sizes, SteadyMarginS, edits);

    private static PlantKind Local(
        string name, string reason, string title, string unit, ImmutableArray<double> sizes, double marginS, Func<PlantHost, PlantPlace, double, ulong, IEnumerable<PlantEdit>> edits) => new()
        {
            Name = name,
            Reason = reason,
            Title = title,
            Unit = unit,
            Sizes = sizes,
            Places = PlantPlaces.InTrials(reason, marginS),
            Edits = edits,
        };

    private static PlantKind Joint(string name, string title, int joints) => new()
    {
        Name = name,
        Reason = ReasonCode.Bridge,
        Title = title,
        Unit = "gel over contact impedance",
        Sizes = Ratios,
        RoundsEach = 2,
        NeedsMicrovolts = false,
        Places = PlantPlaces.InPairs(ReasonCode.Bridge),
        Edits = (host, place, ratio, _) => PlantEdits.Joined(host, place, ratio, joints),
        WhyNot = host => host.Pairs().Any() ? null : "only one channel, or no sites that are adjacent",
    };

    private static PlantKind Clipped() => new()
    {
        Name = "clipping",
        Reason = ReasonCode.Clipping,
        Title = "an amplifier that saturates",
        Unit = "% of the channel's samples",
        Sizes = [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 3],
        NeedsMicrovolts = false,
        IsPlantedOnce = true,
        Places = PlantPlaces.InChannels(ReasonCode.Clipping),
        Edits = (host, place, percent, _) => [PlantEdits.Clipped(host, place, host.Of(place.Channel).SwingAt(1 - (percent / 100)))],
        Having = (host, place, percent) =>
        {
            double distance = host.Of(place.Channel).SwingAt(1 - (percent / 100));
            return place.Trials.Where(trial => host.Of(place.Channel).Beyond((double)host.Trials[trial].WindowFromS, (double)host.Trials[trial].WindowToS, distance) > 0);
        },
    };

    private static PlantKind Drift() => new()
    {
        Name = "drift",
        Reason = ReasonCode.Drift,
        Title = "a baseline that runs away",
        Unit = "µV/min",
        Sizes = [200, 400, 800, 1500, 3000, 6000, 12000],
        Places = PlantPlaces.InTrials(ReasonCode.Drift, MovementMarginS, ReturnS),
        Edits = (host, place, slope, _) => [PlantEdits.Slope(host, place, slope, ReturnS)],
    };

    private static PlantKind Weak() => new()
    {
        Name = "weak-response",
        Reason = ReasonCode.WeakResponse,
        Title = "a task that is answered weakly",
        Unit = "% of the answer's amplitude left",
        Sizes = [70, 50, 35, 25, 15, 8],
        NeedsMicrovolts = false,
        IsPlantedOnce = true,
        Places = PlantPlaces.InTasks(ReasonCode.WeakResponse),
        Edits = (host, place, percent, _) => [PlantEdits.Weakened(host, place, percent / 100)],
        WhyNot = host => host.Trials.Any(trial => trial.Role == Segments.TrialRole.Task) ? null : "no task was asked of any site",
    };

    // A display's rate, or what lies as far from every harmonic; 0 when the band has no room.
    private static double ToneHz(PlantHost host)
    {
        double top = host.Audited.Min(channel => 0.4 * channel.Rate.Value);
        double mains = host.Result.Mains.NominalHz;
        return new[] { 144.0, 133, 97, 77 }.FirstOrDefault(hz => hz < top && Math.Abs(hz - (Math.Round(hz / mains) * mains)) >= 5);
    }
}
