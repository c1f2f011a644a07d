using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests;

/// <summary>Results of an invented study with three sites: cheek, brow, eye.</summary>
internal static class SampleResults
{
    public const string CriteriaSha256 = "4f0c0b7c9d7a1c6c2b5f3f0a9e8d7c6b5a49382716050403020100ffeeddccbb";

    /// <summary>What hostile files may hold as a label.</summary>
    public static ImmutableArray<string> HostileLabels { get; } =
    [
        "=HYPERLINK(\"http://example.invalid\";\"x\")", "<script>alert('x')</script>", "../x", "a\tb", "a\nb", "say \"cheese\"",
        new string('w', 80), "\U0001F600 \u00B5", "+1", "-happy", "@sum", "'=quoted", "\u001b[31mred", "\u202Eright to left", "\t=1", "a;b",
    ];

    /// <summary>A run of three recordings: one with faults, one clean, one without labels; and one that cannot be read.</summary>
    public static SampleRun Run()
    {
        SampleRun run = Run(Faulty(), Clean("day1+p08"), Blocks());
        return run with
        {
            Audit = run.Audit with { Warnings = [new Warning("setup.toml", "[[sites]] 3", "no task is named for 'eye'")] },
            Unread = [new UnreadRecording("day2/notes.docx", "notes.docx: not a recording: a zip archive", "give an EDF, EDF+ or BDF file")],
        };
    }

    /// <summary>A run over given recordings, ordered by id.</summary>
    public static SampleRun Run(params RecordingResult[] recordings) => new(
        new AuditRun
        {
            Version = "0.1.0",
            Criteria = Criteria(),
            Setup = new StudySetup { FileName = "setup.toml", Sha256 = new string('5', 64) },
            Impedance = SampleReadings.Log(),
        },
        [.. recordings.OrderBy(recording => recording.Id, StringComparer.Ordinal).Select(Counted)]);

    // Whatever was audited says how many verdicts hang on the limits: here none does.
    private static RecordingResult Counted(RecordingResult recording) => recording with
    {
        Sensitivity =
        [
            new MovedLimits(
                MovedLimits.AllReasons,
                1,
                recording.Channels.SelectMany(channel => channel.Cells).Aggregate(default(GradeCounts), (counts, cell) => counts.Plus(cell.Verdict)),
                recording.Channels.Aggregate(default(GradeCounts), (counts, channel) => counts.Plus(channel.Verdict))),
        ],
    };

    /// <summary>Two criteria, one with everything that a criterion can have.</summary>
    public static AuditCriteria Criteria() => new()
    {
        Sha256 = CriteriaSha256,
        All =
        [
            new Criterion
            {
                Reason = ReasonCode.LineNoise,
                Questionable = [new LimitSet([new Limit("line_rms", 1), new Limit("line_ratio", -10)])],
                Reject = [new LimitSet([new Limit("line_rms", 5), new Limit("line_ratio", 0)])],
                Source = "engineering judgement",
            },
            new Criterion
            {
                Reason = ReasonCode.Drift,
                Questionable = [new LimitSet([new Limit("drift_slope", 600)]), new LimitSet([new Limit("headroom", 50)])],
                Reject = [new LimitSet([new Limit("headroom", 20)])],
                ChannelQuestionable = [new LimitSet([new Limit("drift_slope", 200)])],
                Source = "engineering judgement",
            },
        ],
    };

    /// <summary>Cheek rejected for mains, brow questionable for drift, eye passing with a question not assessed.</summary>
    public static RecordingResult Faulty() => new()
    {
        Id = "day1+p07",
        Path = "day1/p07.edf",
        Sha256 = new string('a', 64),
        Format = "EDF+C",
        DurationS = 65.5,
        Participant = "p07",
        Mains = new MainsResult(50, 50.02, "found in the data"),
        TrialsFrom = "annotations",
        Trials = Trials(),
        Channels = [Cheek(), Brow(), Eye()],
        Skipped = [new SkippedChannel("Trigger", "a trigger channel")],
        Pairs = [Pair("cheek", "brow"), Pair("cheek", "eye"), Pair("brow", "eye")],
        Information = [Finding("mouth-activity", Grade.Pass, ["cheek"], null, 20, 23, [], "the participant seems to speak", "speech or chewing")],
        Warnings = [new Warning("p07.edf", "header, channel 2", "the unit 'uv' was taken as microvolts")],
        Impedance = SampleReadings.Report(),
        MinimumTrials = 2,
    };

    /// <summary>The same trials with nothing wrong, and no readings.</summary>
    public static RecordingResult Clean(string id) => Faulty() with
    {
        Impedance = null,
        Id = id,
        Path = id.Replace('+', '/') + ".edf",
        Sha256 = new string('b', 64),
        Participant = null,
        Channels = [CleanChannel("cheek"), CleanChannel("brow")],
        Pairs = [Pair("cheek", "brow")],
        Skipped = [],
        Information = [],
        Warnings = [],
    };

    /// <summary>Blocks of 10 s: no trial has a label.</summary>
    public static RecordingResult Blocks() => Clean("day2+p09") with
    {
        TrialsFrom = "blocks",
        Trials = [.. Trials().Select(trial => trial with { Label = null, Role = TrialRole.Scored })],
    };

    /// <summary>Every hostile label as channel, trial and file name.</summary>
    public static RecordingResult Hostile() => Faulty() with
    {
        Id = "hostile",
        Path = "day1/=cmd.edf",
        Participant = "=p",
        Trials = [.. HostileLabels.Select((label, index) => Trial(index + 1, label, TrialRole.Scored, index * 4m))],
        Channels =
        [
            .. HostileLabels.Select(label => CleanChannel(label) with
            {
                Cells = [.. Enumerable.Range(1, HostileLabels.Length).Select(trial => Cell(trial, Grade.Pass))],
            }),
        ],
        Pairs = [Pair(HostileLabels[0], HostileLabels[1])],
        Skipped = [new SkippedChannel(HostileLabels[1], "no <b>calibration</b>")],
    };

    /// <summary>Four channels and 360 trials: as many rows of measures as an hour's recording has.</summary>
    public static RecordingResult Large(int trials = 360) => Faulty() with
    {
        Id = "hour",
        Trials = [.. Enumerable.Range(1, trials).Select(number => Trial(number, number % 2 == 0 ? "happy" : "angry", TrialRole.Scored, number * 10m))],
        Channels =
        [
            .. new[] { "cheek", "brow", "eye", "chin" }.Select(name => CleanChannel(name) with
            {
                Cells = [.. Enumerable.Range(1, trials).Select(trial => Cell(trial, Grade.Pass, trial * 0.123456789))],
            }),
        ],
        Pairs = [],
        Information = [],
    };

    public static Finding Finding(
        string reason, Grade grade, string[] channels, int? trial, double fromS, double toS, Evidence[] evidence, string text, string cause) => new()
        {
            Reason = reason,
            Grade = grade,
            Channels = [.. channels],
            Trial = trial,
            FromS = fromS,
            ToS = toS,
            Evidence = [.. evidence],
            Text = text,
            Cause = cause,
        };

    public static CellResult Cell(int trial, Grade verdict, double lineUv = 0.25) => new()
    {
        Trial = trial,
        Verdict = verdict,
        Reasons = [],
        NotAssessed = [],
        Measures =
        [
            .. MeasureCatalog.OfChannels.Select(measure => measure.Name switch
            {
                "line_rms" => Graded("line_rms", lineUv, lineUv >= 5 ? Grade.Reject : Grade.Pass, 1, 5),
                "line_ratio" => Graded("line_ratio", -20.5, Grade.Pass, -10, 0),
                "clipped" => Graded("clipped", -0.0, Grade.Pass, 0.01, 1),
                "level_trend" => new GradedMeasure(MeasureValue.None("level_trend", "whole recording only"), null, null, null),
                "narrow_hz" => new GradedMeasure(MeasureValue.None("narrow_hz", "no narrow peak"), null, null, null),
                _ => Graded(measure.Name, 1.0 / 3, null, null, null),
            }),
        ],
        Findings = [],
    };

    private static ScoreEffect Effect(int trial) => trial switch
    {
        3 => new ScoreEffect(1.8, 58, 3.1),
        4 => new ScoreEffect(-0.02, -0.4, 5, "at least: as of a Gaussian"),
        _ => new ScoreEffect(null, null, null, "shorter than 1 s"),
    };

    private static GradedMeasure Graded(string name, double value, Grade? grade, double? questionable, double? reject) =>
        new(new MeasureValue(name, value), grade, questionable, reject);

    private static ImmutableArray<Trial> Trials() =>
    [
        Trial(1, "rest", TrialRole.Rest, 0.0000001m),
        Trial(2, "raise lip corner", TrialRole.Task, 8m),
        Trial(3, "happy", TrialRole.Scored, 20.5m),
        Trial(4, "angry", TrialRole.Scored, 30.123456789012m),
        Trial(5, "happy", TrialRole.Scored, 40m),
        Trial(6, null, TrialRole.Scored, 50m),
    ];

    private static Trial Trial(int number, string? label, TrialRole role, decimal onsetS) => new()
    {
        Number = number,
        Label = label,
        Role = role,
        OnsetS = onsetS,
        DurationS = 3m,
        WindowFromS = onsetS,
        WindowToS = onsetS + 3m,
        BaselineFromS = onsetS >= 1 ? onsetS - 1 : null,
    };

    private static ChannelResult Cheek()
    {
        Evidence[] mains = [new Evidence("line_rms", 14.2449, "uV", 5), new Evidence("line_ratio", 6.25, "dB", 0)];
        return CleanChannel("cheek") with
        {
            Label = "EMG cheek",
            Verdict = Grade.Reject,
            Reasons = [ReasonCode.LineNoise, ReasonCode.Bridge],
            NotAssessed = [new NotAssessed(ReasonCode.Drift, "the file is high-passed at 20 Hz")],
            Findings =
            [
                Finding(ReasonCode.LineNoise, Grade.Reject, ["cheek"], null, 0, 65.5, mains, "mains pickup is stronger than the muscle", "a loose ground or a lead near a mains cable") with { Effect = new ScoreEffect(null, 58.5, null) },
                Finding(ReasonCode.Bridge, Grade.Questionable, ["cheek", "eye"], null, 0, 65.5, [new Evidence("rho_high_rest", 0.1849, "1", 0.12)], "cheek and eye share more than neighbours do", "gel that has run from one site to the other"),
            ],
            Cells =
            [
                .. Enumerable.Range(1, 6).Select(trial => trial is 3 or 4 or 5
                    ? Cell(trial, Grade.Reject, 12.0 + trial) with
                    {
                        Reasons = [ReasonCode.LineNoise, ReasonCode.Bridge],
                        BaselineMeasures = [Graded("line_rms", 11.5, Grade.Reject, 1, 5)],
                        Findings = [Finding(ReasonCode.LineNoise, Grade.Reject, ["cheek"], trial, 10 * trial, (10 * trial) + 3, [new Evidence("line_rms", 12.0 + trial, "uV", 5)], "mains pickup is stronger than the muscle", "a loose ground") with { FromQuietStretches = trial == 4, Effect = Effect(trial) }],
                    }
                    : Cell(trial, Grade.Questionable) with { Reasons = [ReasonCode.Bridge] }),
            ],
        };
    }

    private static ChannelResult Brow() => CleanChannel("brow") with
    {
        Verdict = Grade.Questionable,
        Reasons = [ReasonCode.Drift],
        Findings = [Finding(ReasonCode.Drift, Grade.Questionable, ["brow"], null, 30, 65.5, [new Evidence("drift_slope", -1234.5678, "uV/min", 600)], "the baseline wanders", "the contact has not settled")],
    };

    private static ChannelResult Eye() => CleanChannel("eye") with
    {
        NotAssessed = [new NotAssessed(ReasonCode.Drift, "the file is high-passed at 20 Hz")],
        Cells =
        [
            .. Enumerable.Range(1, 6).Select(trial => trial == 6
                ? Cell(trial, Grade.Questionable) with
                {
                    Reasons = [ReasonCode.UnusableInput],
                    NotAssessed = [new NotAssessed(ReasonCode.LineNoise, "shorter than 0.2 s"), new NotAssessed(ReasonCode.Drift, "shorter than 0.2 s")],
                }
                : Cell(trial, Grade.Pass)),
        ],
    };

    private static ChannelResult CleanChannel(string name) => new()
    {
        Name = name,
        Label = "EMG " + name,
        RateHz = 2000,
        BandFromHz = 20,
        BandToHz = 450,
        Verdict = Grade.Pass,
        Reasons = [],
        NotAssessed = [],
        Measures = Cell(0, Grade.Pass, 0.5).Measures,
        Findings = [],
        Cells = [.. Enumerable.Range(1, 6).Select(trial => Cell(trial, Grade.Pass))],
    };

    private static PairResult Pair(string a, string b) => new()
    {
        ChannelA = a,
        ChannelB = b,
        Rows =
        [
            new PairRow("3", 0.0370370370370, -0.042, 1.5, 0.17, 0.5, 1e-7),
            new PairRow("all", 0.01, null, 1.25, 0.013, -0.0, 2, "the band ends below 300 Hz"),
            new PairRow("rest", null, null, null, null, null, null, "no rest segment of 1 s"),
        ],
        Evidence = new BridgeEvidence { RestSegments = 12, RhoRest = 0.02, Decision = "no bridge", Why = "nothing is shared" },
    };
}
