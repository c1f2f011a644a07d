using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using MathNet.Numerics.Distributions;
using static ChannelAudit.Calibration.Study.StudySession;

namespace ChannelAudit.Calibration.Study;

/// <summary>Every fault of the study.</summary>
internal static class FaultSweeps
{
    // A bridge's resistance is stated against one contact's impedance, a joint within a pair against both.
    private const double ContactKohm = 5;
    private const double DisplayHz = 144;
    private const double PopsOverMuscle = 6;

    private static readonly ImmutableArray<double> Ratios = [4, 2, 1.5, 1, 0.8, 0.6, 0.4, 0.2, 0.1, 0];
    private static readonly ImmutableArray<double> Tones = [0.3, 0.6, 1, 2, 3, 5, 8, 12, 20, 40];
    private static readonly ImmutableArray<double> ClippedPercents = [0.003, 0.01, 0.03, 0.1, 0.3, 0.6, 1, 2, 5, 10];

    /// <summary>All of them.</summary>
    public static ImmutableArray<Sweep> All { get; } =
    [
        Whole("line-noise", "Mains in one channel", "µV rms of all harmonics", Tones, [7, 8, 9], ReasonCode.LineNoise, (subject, uv) => new MainsPickup([Cheek], uv, subject.MainsHz)) with { SecondName = "line-noise" },
        Whole("line-common", "Mains in all channels", "µV rms of all harmonics", Tones, [7, 8, 9], ReasonCode.LineNoise, (subject, uv) => new MainsPickup(AllSites, uv, subject.MainsHz)),
        Whole("narrow-band", "A steady tone that is not mains", "µV rms", Tones, [7, 8, 9], ReasonCode.NarrowBand, (_, uv) => new NarrowPeak([Cheek], uv, DisplayHz)) with { SecondName = "narrow-band" },
        Whole("bridge-two", "Two sites joined at two places", "gel over contact impedance", Ratios, [5, 6, 7, 8, 9], ReasonCode.Bridge, (_, ratio) => ElectrodeBridge.TwoNodes(Cheek, Eye, ratio * ContactKohm))
            with { Wanted = Grade.Questionable, SecondName = "bridge-two" },
        Whole("bridge-one", "Two sites joined at one place", "gel over contact impedance", Ratios, [], ReasonCode.Bridge, (_, ratio) => ElectrodeBridge.OneNode(Cheek, Eye, ratio * ContactKohm))
            with { Wanted = Grade.Questionable, SecondName = "bridge-one" },
        Whole("within-pair", "The two electrodes of a site joined", "gel over both contacts", [2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0], [6, 7], ReasonCode.WeakResponse, (_, ratio) => ElectrodeBridge.WithinPair(Cheek, ratio * 2 * ContactKohm))
            with { Wanted = Grade.Questionable, SecondName = "within-pair" },
        Clipped("clipping", "The converter's range is too small", percent: ClippedPercents, rail: (site, uv) => new HeaderRail(site, uv)) with { SecondName = "clipping" },
        Clipped("clipping-hidden", "The amplifier saturates below the file's limits", ClippedPercents, (site, uv) => new HiddenRail(site, uv)),
        Local("flatline", "A channel that holds one value", "ms, in every second trial", [8, 15, 25, 40, 80, 150, 220, 300, 600, 1500], [7, 8, 9], ReasonCode.Flatline, (trial, ms, _) => new Flatline(Cheek) { Span = MiddleOf(trial, ms) }) with { SecondName = "flatline" },
        Local("flatline-toggling", "A lead off, the converter toggles between two codes", "ms, in every second trial", [50, 110, 150, 220, 300, 600, 1500], [4, 5, 6], ReasonCode.Flatline, (trial, ms, _) => new Flatline(Cheek) { Toggles = true, Span = MiddleOf(trial, ms) }),
        Local("dropout", "Samples that are not there", "ms, in every second trial", [1, 5, 20, 40, 60, 100, 300, 1000], [4, 5, 6, 7], ReasonCode.Dropout, (trial, ms, _) => new MissingSamples(Cheek) { Span = MiddleOf(trial, ms) }),
        Local("drift", "A baseline that runs away during trials", "µV/min", [50, 200, 400, 800, 1500, 3000, 5000, 8000, 12000, 20000], [7, 8, 9], ReasonCode.Drift, (trial, slope, _) => new Drift(Cheek, slope) { Span = FaultSpan.Of(trial) }, ToDc)
            with { SecondName = "drift" },
        Whole("headroom", "An offset near the rail", "% of headroom left", [90, 70, 60, 55, 45, 30, 22, 15, 10], [7, 8], ReasonCode.Drift, (subject, percent) => new Drift(Cheek, 0, (1 - (percent / 100)) * subject.Amplifier.HighestCode * subject.Amplifier.StepUv), subject => Coupled(subject, 16)),
        Local("low-frequency", "Leads that sway during trials", "µV rms, 0.5 to 8 Hz", [3, 6, 10, 15, 25, 40, 70, 120, 250, 500], [7, 8, 9], ReasonCode.LowFrequency, (trial, uv, _) => new Motion(AllSites, uv) { Span = FaultSpan.Of(trial) }, ToDc)
            with { SecondName = "low-frequency" },
        Local("pops", "Short spikes of a contact", "spikes in the trial", [0, 1, 2, 3, 4, 6, 10], [4, 5, 6], ReasonCode.Pops, (trial, count, subject) => new ElectrodePops(Cheek, PopsOverMuscle * subject.ContractionUv, (int)count) { Span = FaultSpan.Of(trial) })
            with { SecondName = "pops" },
        Whole("noise-floor", "White noise of a poor contact", "µV rms, 20 to 450 Hz", [0.5, 1, 1.5, 2, 3, 4, 6, 9, 13, 20, 40], [9, 10], ReasonCode.NoiseFloor, (_, uv) => new BroadbandNoise([Cheek], uv)) with { SecondName = "noise-floor" },
        LeadOffHalfWay(),
        WeakResponse(),
        LeadSwap(),
        Smoothed(),
    ];

    private static Sweep Whole(
        string name, string title, string severity, ImmutableArray<double> severities, ImmutableArray<int> gross, string reason, Func<Subject, double, Fault> fault, Func<Subject, Subject>? subject = null) => new()
        {
            Name = name,
            Title = title,
            Severity = severity,
            Severities = severities,
            Gross = gross,
            Reasons = [reason],
            Plan = (drawn, size) =>
            {
                Subject own = subject?.Invoke(drawn) ?? drawn;
                return With(own, [fault(own, size)]);
            },
            Cells = plan => [.. SitesOf(plan.Faults[^1]).SelectMany(site => CellsOf(plan, site, _ => true))],
        };

    private static Sweep Local(
        string name, string title, string severity, ImmutableArray<double> severities, ImmutableArray<int> gross, string reason, Func<PlannedTrial, double, Subject, Fault> fault, Func<Subject, Subject>? subject = null) => new()
        {
            Name = name,
            Title = title,
            Severity = severity,
            Severities = severities,
            Gross = gross,
            Reasons = [reason],
            Plan = (drawn, size) =>
            {
                Subject own = subject?.Invoke(drawn) ?? drawn;
                return InTrials(own, trial => fault(trial, size, own));
            },
        };

    // Answers as strong as the contraction, so that many trials are clipped alike; a Gaussian then tells where the rail must lie.
    private static Sweep Clipped(string name, string title, ImmutableArray<double> percent, Func<string, double, Fault> rail) => new()
    {
        Name = name,
        Title = title,
        Severity = "% of samples at the rail",
        Severities = percent,
        Gross = [7, 8, 9],
        Reasons = [ReasonCode.Clipping],
        Plan = (drawn, size) =>
        {
            Subject subject = drawn with
            {
                Answer = drawn.ContractionUv / drawn.RestUv,
                Amplifier = drawn.Amplifier with { OffsetUv = 0, SettlingUvPerMin = 0 },
            };
            double channelUv = Math.Sqrt((subject.ContractionUv * subject.ContractionUv) + RestPower(subject));
            return With(subject, [rail(Cheek, -Normal.InvCDF(0, channelUv, size / 200))]);
        },
        Cells = plan => [.. CellsOf(plan, Cheek, trial => MuscleLevels.LevelIn(trial, Cheek, 0) > 0)],
    };

    // From one trial on to the end: the trials before it must pass.
    private static Sweep LeadOffHalfWay() => new()
    {
        Name = "lead-off",
        Title = "A lead that comes off half-way",
        Severity = "µV rms of mains that the open lead catches",
        Severities = [1, 2, 5, 10, 20, 50, 100, 200],
        Gross = [4, 5, 6, 7],
        Reasons = [ReasonCode.LineNoise, ReasonCode.NoiseFloor, ReasonCode.WeakResponse],
        Plan = (subject, uv) =>
        {
            SessionPlan plan = With(subject);
            return plan with
            {
                Faults = [.. plan.Faults, new LeadOff(Cheek) { MainsUv = uv, NoiseUv = 0.15 * uv, Hz = subject.MainsHz, Span = new FaultSpan(HalfWayS(plan), null) }],
            };
        },
        Cells = plan => [.. CellsOf(plan, Cheek, trial => trial.OnsetS > HalfWayS(plan))],
    };

    private static decimal HalfWayS(SessionPlan plan) => plan.Trials[plan.Trials.Length / 2].OnsetS - 0.5M;

    private static Sweep WeakResponse() => new()
    {
        Name = "weak-response",
        Title = "A muscle that hardly answers its task",
        Severity = "dB over rest",
        Severities = [20, 17, 15, 13, 11, 9, 7, 5, 3, 0],
        Gross = [8, 9],
        Reasons = [ReasonCode.WeakResponse],
        SecondName = "weak-response",
        Plan = (subject, decibels) =>
        {
            double level = Math.Sqrt((subject.RestUv * subject.RestUv) + (RestPower(subject) * Math.Pow(10, decibels / 10)));
            return Answering(subject, Cheek, [new SiteActivity(Cheek, level)]);
        },
        Cells = plan => [.. CellsOf(plan, Cheek, trial => IsTaskOf(plan, trial, Cheek))],
    };

    private static Sweep LeadSwap() => new()
    {
        Name = "lead-swap",
        Title = "The leads of cheek and eye exchanged",
        Severity = "µV rms of the contraction",
        Severities = [2, 4, 6, 10, 15, 25, 40],
        Gross = [5, 6],
        Reasons = [ReasonCode.LeadSwap],
        SecondName = "lead-swap",
        SecondSeverities = [1],
        Plan = (subject, uv) => Exchanged(subject, uv),
        Cells = plan => [.. CellsOf(plan, Cheek, _ => true), .. CellsOf(plan, Eye, _ => true)],
    };

    private static Sweep Smoothed() => new()
    {
        Name = "unusable-input",
        Title = "Rectified, then smoothed",
        Severity = "ms of smoothing",
        Severities = [0, 5, 10, 20, 50, 100, 200],
        Gross = [0, 1, 2, 3, 4, 5, 6],
        Reasons = [ReasonCode.UnusableInput],
        Wanted = Grade.Questionable,
        SecondName = "unusable-input",
        SecondSeverities = [1, 2],
        Plan = (subject, _) => With(subject),
        Alter = (recording, ms) => SmoothedRecording.Of(recording, ms / 1000),
        Cells = plan => [.. AllSites.SelectMany(site => CellsOf(plan, site, _ => true))],
    };

    private static SessionPlan Exchanged(Subject subject, double uv)
    {
        SessionPlan plan = With(subject);
        return plan with
        {
            Trials =
            [
                .. plan.Trials.Select(trial => trial with
                {
                    Activity = [.. trial.Activity.Select(one => new SiteActivity(Other(one.Site), IsTaskOf(plan, trial, Cheek) || IsTaskOf(plan, trial, Eye) ? uv : one.RmsUv))],
                }),
            ],
        };
    }

    private static string Other(string site) => site switch { Cheek => Eye, Eye => Cheek, _ => site };

    private static SessionPlan Answering(Subject subject, string site, ImmutableArray<SiteActivity> activity)
    {
        SessionPlan plan = With(subject);
        return plan with { Trials = [.. plan.Trials.Select(trial => IsTaskOf(plan, trial, site) ? trial with { Activity = activity } : trial)] };
    }

    private static bool IsTaskOf(SessionPlan plan, PlannedTrial trial, string site) =>
        string.Equals(trial.Label, plan.Sites[plan.SiteIndex(site)].Task, StringComparison.Ordinal);

    private static IEnumerable<FaultyCell> CellsOf(SessionPlan plan, string site, Func<PlannedTrial, bool> isMet) =>
        Enumerable.Range(1, plan.Trials.Length).Where(number => isMet(plan.Trials[number - 1])).Select(number => new FaultyCell(site, number));

    private static ImmutableArray<string> SitesOf(Fault fault) => fault switch
    {
        MainsPickup { Sites: var sites } => sites,
        ElectrodeBridge { Paths: var joints } => [.. joints.SelectMany(joint => new[] { joint.One.Site, joint.Other.Site }).Distinct(StringComparer.Ordinal)],
        _ => [Cheek],
    };

    // What the channel shows at rest within the band: muscle, two electrodes, amplifier.
    private static double RestPower(Subject subject) =>
        (subject.RestUv * subject.RestUv) + (2 * subject.ElectrodeNoiseUv * subject.ElectrodeNoiseUv) + (subject.Amplifier.NoiseUv * subject.Amplifier.NoiseUv);

    private static FaultSpan MiddleOf(PlannedTrial trial, double ms)
    {
        decimal half = (decimal)ms / 2000;
        decimal middle = trial.OnsetS + (trial.DurationS / 2);
        return new FaultSpan(middle - half, middle + half);
    }

    // Behind a high-pass there is neither drift nor sway; rails far away keep headroom out of it.
    private static Subject ToDc(Subject subject) => Coupled(subject, 24);

    private static Subject Coupled(Subject subject, int bits) =>
        subject with { Amplifier = subject.Amplifier with { HighpassHz = 0, LowpassHz = null, Bits = bits } };
}
