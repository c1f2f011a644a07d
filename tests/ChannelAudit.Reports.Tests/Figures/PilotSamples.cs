using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;
using ChannelAudit.Pilot;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>Invented pilots: from a clean set-up of three sites to what no lab would do.</summary>
internal static class PilotSamples
{
    private static readonly string[] Places = ["forehead", "brow", "eye", "cheek", "lip", "jaw", "chin", "neck"];

    /// <summary>Every sample with its name.</summary>
    public static ImmutableArray<(string Name, PilotReport Report)> All { get; } =
    [
        ("start", Report(PilotAnswer.Start, [Site("cheek"), Site("eye"), Site("brow")])),
        ("bridge", Bridge()),
        ("suspected", Suspected()),
        ("one site", Report(PilotAnswer.NotYet, [Site("cheek", Grade.Reject, ReasonCode.LineNoise)], Step(StepKind.Ground))),
        ("eight sites", EightSites()),
        ("one side", Report(PilotAnswer.Start, [.. Places.Select(place => Site(place, kohm: 4.2) with { Setup = Setup(place, null) })])),
        ("no setup", Report(PilotAnswer.Doubtful, Channels(6, 4, Grade.Questionable)) with
        {
            NotChecked = ["without a setup: which channel is which site, whether each muscle answers its task, which sites gel can join"],
        }),
        ("no traces", NoTraces()),
        ("long names", LongNames()),
        ("24 channels", Report(PilotAnswer.NotYet, Channels(24, 9, Grade.Reject), Step(StepKind.Leads, "EMG 9", "EMG 18"))),
        ("nothing judged", Report(PilotAnswer.CannotSay, [Open("cheek"), Open("brow")], Step(StepKind.Input))),
        ("one place", OnePlace()),
    ];

    private static TaskResponse NotRecorded => new("raise lip corner", 0, null, null, null, null, "the recording has no 'raise lip corner'");

    private static TaskResponse NoRest => new("close eyes firmly", 1, null, 20, "brow", null, "no rest to compare with");

    public static PilotReport Of(string name) => All.Single(sample => string.Equals(sample.Name, name, StringComparison.Ordinal)).Report;

    private static PilotReport NoTraces() => Report(
        PilotAnswer.Doubtful,
        [Site("cheek") with { Trace = null, Task = NotRecorded }, Plain("brow", Grade.Questionable), Site("eye") with { Task = NoRest }]);

    private static PilotReport Bridge()
    {
        PilotJoint joint = new("cheek", "eye", Grade.Reject, 0.9, 0.9);
        return Report(
            PilotAnswer.NotYet,
            [Site("cheek", Grade.Reject, ReasonCode.Bridge, kohm: 2.0), Site("brow", kohm: 3.6), Site("eye", Grade.Reject, ReasonCode.Bridge, kohm: 28)],
            Step(StepKind.Wipe, "cheek", "eye"),
            Step(StepKind.Renew, "eye")) with
        {
            Joints = [joint],
        };
    }

    private static PilotReport Suspected()
    {
        PilotSite eye = Site("eye", Grade.Questionable, ReasonCode.Bridge) with { Task = new TaskResponse("close eyes firmly", 1, 4, 3.1, "cheek", 9, null) };
        return Report(
            PilotAnswer.Doubtful,
            [Site("cheek", Grade.Questionable, ReasonCode.Bridge), Site("brow"), eye],
            Step(StepKind.Settle, "cheek", "eye")) with
        {
            Joints = [new PilotJoint("cheek", "eye", Grade.Questionable, 0.3, null)],
        };
    }

    private static PilotReport EightSites()
    {
        ImmutableArray<PilotSite> sites =
        [
            .. new[] { "cheek", "eye", "brow", "forehead" }.SelectMany(place => new[] { "left", "right" }.Select(side =>
                (place is "eye" ? Site($"eye {side[0]}", Grade.Reject, ReasonCode.NoiseFloor, 5.5) : Site($"{place} {side[0]}", kohm: place is "brow" ? 112 : 5.5)) with
                {
                    Setup = Setup($"{place} {side[0]}", side),
                })),
        ];
        string[] all = [.. sites.Select(site => site.Name)];
        return Report(
            PilotAnswer.NotYet,
            sites,
            Step(StepKind.Leads, [.. all]),
            Step(StepKind.Fasten, "brow l"),
            Step(StepKind.Settle, "eye l", "cheek l"),
            Step(StepKind.Wait, [.. all]),
            Step(StepKind.Prepare, "eye l", "eye r")) with
        {
            Joints = [new PilotJoint("cheek l", "eye l", Grade.Questionable, null, null), new PilotJoint("cheek r", "brow r", Grade.Reject, null, null)],
            NotChecked =
            [
                "rest as it was asked for: no trial has a label of rest, so the quietest seconds stand for it", "drift: the recording is too short for it, 60 s are needed",
            ],
        };
    }

    private static PilotReport LongNames()
    {
        string hostile = "=say(\u202E\u0007\"cheese\")" + new string('i', 60);
        string[] names = [new string('W', 80), hostile, "cheek " + string.Join(' ', Enumerable.Repeat("harbour", 10))];
        return Report(
            PilotAnswer.NotYet,
            [.. names.Select(name => Site(name, Grade.Reject, ReasonCode.LineNoise, kohm: 1234))],
            Step(StepKind.Leads, [.. names]),
            Step(StepKind.Settle, names[0], names[1])) with
        {
            Joints = [new PilotJoint(names[0], names[1], Grade.Reject, null, null)],
            NotChecked = [new string('x', 400)],
        };
    }

    private static PilotReport OnePlace()
    {
        PilotSite At(string name, double x, double y) => Site(name) with { Setup = Setup(name, null) with { Position = [x, y] } };
        return Report(
            PilotAnswer.Start,
            [
                .. new[] { "upper", "lower", "outer", "inner" }.Select(where => Site("cheek " + where, kohm: 3)),
                At("scalp", 0.5, 0.0), At("neck low", 1, 1), At("ground beside", 0.5, 0.22),
            ]);
    }

    private static PilotReport Report(PilotAnswer answer, ImmutableArray<PilotSite> sites, params ImmutableArray<PilotStep> next) =>
        new() { Recording = SampleResults.Clean("harbour-03"), Answer = answer, Sites = sites, Next = next };

    private static ImmutableArray<PilotSite> Channels(int count, int every, Grade bad) =>
        [.. Enumerable.Range(1, count).Select(i => Plain(FormattableString.Invariant($"EMG {i}"), i % every == 0 ? bad : Grade.Pass))];

    private static PilotSite Open(string name) => Plain(name, Grade.Questionable) with { IsAssessed = false };

    private static PilotSite Plain(string name, Grade verdict) => new() { Name = name, Verdict = verdict, IsAssessed = true };

    private static PilotSite Site(string name, Grade verdict = Grade.Pass, string? reason = null, double? kohm = null) => new()
    {
        Name = name,
        Setup = Setup(name, "left"),
        Verdict = verdict,
        IsAssessed = true,
        Reasons = reason is null ? [] : [new SiteReason(reason, verdict, false, reason, reason)],
        NotAssessed = verdict == Grade.Pass && kohm is null ? [new NotAssessed(ReasonCode.Drift, "less than 60 s")] : [],
        Task = new TaskResponse("raise lip corner", 1, 18.2, 22, "brow", 3, null),
        RestUv = 2.04,
        Trace = new TaskTrace(Burst(), 21, 25),
        Readings = kohm is { } value ? Readings(name, value) : null,
    };

    private static SiteSetup Setup(string name, string? side) => new() { Name = name, Channel = name, Side = side, Task = "raise lip corner" };

    private static PilotStep Step(StepKind kind, params ImmutableArray<string> sites) => new(kind, sites, [], true, 1, "what was seen");

    private static SiteImpedance Readings(string site, double kohm)
    {
        SiteElectrode a = new(site, IsSecond: false);
        SiteElectrode b = new(site, IsSecond: true);
        PairImpedance Read(ImpedancePair pair, SiteElectrode from, SiteElectrode to)
        {
            LoggedReading reading = new(2, from, to, kohm);
            return new PairImpedance(pair, new ImpedanceCourse([reading]));
        }

        return new SiteImpedance
        {
            Name = site,
            Pairs =
            [
                Read(ImpedancePair.AToB, a, b), Read(ImpedancePair.AToGround, a, SiteElectrode.Ground), Read(ImpedancePair.BToGround, b, SiteElectrode.Ground),
            ],
        };
    }

    // Rest, a contraction of 4 s, rest: 600 columns of a rough signal that needs no random numbers.
    private static Trace Burst()
    {
        double Size(int column) => (column is > 100 and < 500 ? 30 : 3) * (0.6 + (0.4 * Math.Abs(Math.Sin(column * 12.9898))));
        ImmutableArray<double> greatest = [.. Enumerable.Range(0, 600).Select(Size)];
        return new Trace(20, 26, [.. greatest.Select((size, i) => -size * (0.7 + (0.3 * Math.Abs(Math.Cos(i * 78.233)))))], greatest);
    }
}
