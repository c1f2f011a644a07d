using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>Invented results of an invented study in which people watch harbour lights.</summary>
public static class RibbonSamples
{
    public static readonly ImmutableArray<GradedMeasure> Numbers = [new(new MeasureValue("emg_rms", 6.5), null, null, null)];

    /// <summary>Every sample with its name.</summary>
    public static ImmutableArray<(string Name, RecordingResult Recording)> All() =>
    [
        ("eight trials", EightTrials()), ("400 trials", FourHundredTrials()), ("without trials", WithoutTrials()), ("two seconds", TwoSeconds()), ("peaks", ClippedPeaks()),
        ("odd labels", OddLabels()), ("without channels", WithoutChannels()), ("not assessed", NotAssessed()), ("all pass", AllPass()), ("paused", Paused()),
        ("12 channels", ManyChannels(12)), ("64 channels", ManyChannels(64)), ("80 channels", ManyChannels(80)),
    ];

    /// <summary>Three sites, eight trials, one reject for mains, one joined pair seen in trials, one clean.</summary>
    public static RecordingResult EightTrials()
    {
        ImmutableArray<Trial> trials =
        [
            OneTrial(1, 4, 12, "rest", TrialRole.Rest), OneTrial(2, 20, 5, "raise lip corner", TrialRole.Task), OneTrial(3, 30, 8, "calm sea"),
            OneTrial(4, 44, 8, "lighthouse"), OneTrial(5, 58, 8, "fog horn"), OneTrial(6, 72, 8, "calm sea"), OneTrial(7, 86, 8, "lighthouse"),
            OneTrial(8, 100, 8, "fog horn"),
        ];
        Finding mains = OneFinding(ReasonCode.LineNoise, Grade.Reject, ["brow"], 42, 120, "line_rms", 14.2, "uV", cause: "a loose lead: the other sites are quiet");
        Finding clip = OneFinding(ReasonCode.Clipping, Grade.Questionable, ["eye"], 72, 80, "clipped", 0.4, "%", trial: 6);
        return Recording("harbour+session-03", 120, trials,
        [
            Channel("cheek", Grade.Pass, trials, _ => Cell(Grade.Pass)),
            Channel("brow", Grade.Reject, trials, trial => trial.Number >= 4 ? Cell(Grade.Reject, ReasonCode.LineNoise) : Cell(Grade.Pass)) with
            {
                Reasons = [ReasonCode.LineNoise],
                Findings = [mains],
            },
            Channel("eye", Grade.Questionable, trials, trial => trial.Number switch
            {
                6 => Cell(Grade.Questionable, ReasonCode.Clipping, ReasonCode.Drift) with { Findings = [clip] },
                2 => new CellResult { Trial = 0, Verdict = Grade.Questionable, Reasons = [ReasonCode.UnusableInput], NotAssessed = [new("unusable-input", "no samples")], Measures = [], Findings = [] },
                _ => Cell(Grade.Pass) with { NotAssessed = trial.Number == 8 ? [new NotAssessed(ReasonCode.LineNoise, "the notch of the amplifier hides it")] : [] },
            }) with { Reasons = [ReasonCode.Clipping] },
        ]);
    }

    /// <summary>Three sites, one hour, 400 short trials.</summary>
    public static RecordingResult FourHundredTrials()
    {
        ImmutableArray<Trial> trials = [.. Enumerable.Range(1, 400).Select(number => OneTrial(number, 30 + ((number - 1) * 8.9m), 3, number % 3 == 0 ? "fog horn" : "calm sea"))];
        Finding drop = OneFinding(ReasonCode.Dropout, Grade.Reject, ["eye"], 1800, 1806, "gap", 6000, "ms", cause: "the radio link was interrupted");
        return Recording("harbour+long watch", 3600, trials,
        [
            Channel("cheek", Grade.Pass, trials, trial => trial.Number is 77 or 250 ? Cell(Grade.Reject, ReasonCode.Flatline) : Cell(Grade.Pass)),
            Channel("brow", Grade.Reject, trials, trial => trial.Number is >= 300 and < 360 ? Cell(Grade.Reject, ReasonCode.Bridge, ReasonCode.LineNoise) : trial.Number % 9 == 0 ? Cell(Grade.Questionable, ReasonCode.Drift) : Cell(Grade.Pass)) with
            {
                Reasons = ["bad-trials", ReasonCode.Bridge],
                Findings =
                [
                    OneFinding(ReasonCode.Bridge, Grade.Reject, ["brow", "cheek"], 2690, 3230, "rho_rest", 0.97, "1", cause: "gel joins the two sites"),
                    OneFinding("bad-trials", Grade.Reject, ["brow"], 0, 3600, "bad_share", 15, "%"),
                ],
            },
            Channel("eye", Grade.Questionable, trials, trial => trial.Number is 199 or 200 ? Cell(Grade.Reject, ReasonCode.Dropout) : trial.Number is > 100 and < 140 ? Cell(Grade.Questionable, ReasonCode.NarrowBand) : Cell(Grade.Pass)) with
            {
                Reasons = [ReasonCode.Dropout],
                Findings = [drop],
            },
        ]);
    }

    /// <summary>29 trials; the eye clips in every third from the third on, the brow's recorder lost samples in one, and the cheek is flat all through a stretch.</summary>
    public static RecordingResult ClippedPeaks()
    {
        ImmutableArray<Trial> trials = [.. Enumerable.Range(1, 29).Select(number => OneTrial(number, (number * 6) - 3, 3, "bright lamp"))];
        Finding clip = OneFinding(ReasonCode.Clipping, Grade.Reject, ["eye"], 15.2, 161.8, "clipped", 3.3, "%", cause: "the gain is too high");
        Finding flat = OneFinding(ReasonCode.Flatline, Grade.Reject, ["cheek"], 60, 78, "flat", 10, "%", cause: "a lead is off");
        return Recording("harbour+bright", 180, trials,
        [
            Channel("cheek", Grade.Questionable, trials, _ => Cell(Grade.Pass)) with
            {
                Reasons = [ReasonCode.Flatline],
                Measures = [.. Numbers, new(new MeasureValue("flat", 10), null, null, null)],
                Findings = [flat with { Grade = Grade.Questionable }],
            },
            Channel("brow", Grade.Pass, trials, trial => trial.Number == 17 ? Cell(Grade.Reject, ReasonCode.Dropout) : Cell(Grade.Pass)),
            Channel("eye", Grade.Reject, trials, trial => trial.Number % 3 == 0 ? WithFinding(ReasonCode.Clipping, trial) : Cell(Grade.Pass)) with
            {
                Reasons = [ReasonCode.Clipping],
                Measures = [.. Numbers, new(new MeasureValue("clipped", 3.3), null, null, null)],
                Findings = [clip],
            },
        ]);
    }

    /// <summary>As many channels as asked for, 24 trials.</summary>
    public static RecordingResult ManyChannels(int count)
    {
        ImmutableArray<Trial> trials = [.. Enumerable.Range(1, 24).Select(number => OneTrial(number, number * 10, 6, "calm sea"))];
        return Recording("harbour+array", 260, trials, [.. Enumerable.Range(1, count).Select(number => Numbered(number, trials))]);
    }

    /// <summary>One site that passes, without trials.</summary>
    public static RecordingResult WithoutTrials() => Recording("harbour+quiet", 95, [], [Channel("cheek", Grade.Pass, [], _ => Cell(Grade.Pass))]);

    /// <summary>Two seconds, one trial.</summary>
    public static RecordingResult TwoSeconds()
    {
        ImmutableArray<Trial> trials = [OneTrial(1, 0.5m, 1, "fog horn")];
        return Recording("harbour+short", 2, trials,
        [
            Channel("cheek", Grade.Questionable, trials, _ => Cell(Grade.Questionable, ReasonCode.Drift)) with { Reasons = [ReasonCode.Drift] },
            Channel("brow", Grade.Pass, trials, _ => Cell(Grade.Pass)) with { NotAssessed = [new(ReasonCode.Bridge, "less than 2 s at rest"), new(ReasonCode.LineNoise, "too short")] },
        ]);
    }

    /// <summary>A label of 80 characters, one with a line break, a reversed direction and characters no font has, and trials that overlap.</summary>
    public static RecordingResult OddLabels()
    {
        ImmutableArray<Trial> trials =
        [
            OneTrial(1, 0, 60, "rest", TrialRole.Rest), OneTrial(2, 5, 10, "calm sea"), OneTrial(3, 12, 10, "calm sea"), OneTrial(4, 40, 30, "fog horn"),
        ];
        return Recording("harbour+odd", 60, trials,
        [
            Channel(string.Concat(Enumerable.Repeat("zygomaticus ", 7))[..80], Grade.Reject, trials, trial => trial.Number == 4 ? Cell(Grade.Reject, ReasonCode.Dropout) : Cell(Grade.Pass)) with
            {
                Reasons = [ReasonCode.Dropout],
                Findings = [OneFinding(ReasonCode.Dropout, Grade.Reject, ["x"], 40, 60, "missing", 33, "%", cause: string.Concat(Enumerable.Repeat("The trial runs past the end of the recording. ", 9)))],
            },
            Channel("\u65E5\u672C\n\u202Ebrow\t\uD800 \u00B5\u03A9\u00B2\u00B7\u2192\u2265\u2264", Grade.Pass, trials, _ => Cell(Grade.Pass)),
        ]);
    }

    /// <summary>Nothing could be audited.</summary>
    public static RecordingResult WithoutChannels() => Recording("harbour+empty", 0, [], []) with { Skipped = [new("Trigger", "a trigger channel")] };

    /// <summary>The eight trials with a pause between the third and the fourth.</summary>
    public static RecordingResult Paused() => EightTrials() with { Gaps = [new(39, 43.5)] };

    /// <summary>Channels of which nothing could be judged, beside one that passes.</summary>
    public static RecordingResult NotAssessed()
    {
        ImmutableArray<Trial> trials = [OneTrial(1, 5, 10, "calm sea"), OneTrial(2, 20, 10, "fog horn")];
        CellResult nothing = new() { Trial = 0, Verdict = Grade.Questionable, Reasons = [ReasonCode.UnusableInput], NotAssessed = [new(ReasonCode.UnusableInput, "no sample is a number")], Measures = [], Findings = [] };
        return Recording("harbour+unread", 40, trials,
        [
            Channel("cheek", Grade.Questionable, trials, _ => nothing) with { Measures = [], Reasons = [ReasonCode.UnusableInput], NotAssessed = [new(ReasonCode.UnusableInput, "no sample is a number")] },
            Channel("brow", Grade.Pass, trials, _ => Cell(Grade.Pass)),
        ]);
    }

    /// <summary>Everything passes, nothing is left open.</summary>
    public static RecordingResult AllPass()
    {
        ImmutableArray<Trial> trials = [.. Enumerable.Range(1, 12).Select(number => OneTrial(number, number * 9, 6, "calm sea"))];
        return Recording("harbour+clean", 125, trials, [.. new[] { "cheek", "brow", "eye" }.Select(name => Channel(name, Grade.Pass, trials, _ => Cell(Grade.Pass)))]);
    }

    public static RecordingResult Recording(string id, double durationS, ImmutableArray<Trial> trials, ImmutableArray<ChannelResult> channels) => new()
    {
        Id = id,
        Path = id + ".edf",
        Sha256 = new string('0', 64),
        Format = "EDF+",
        DurationS = durationS,
        Mains = new MainsResult(50, 50.01, "found in the data"),
        TrialsFrom = "annotations",
        Trials = trials,
        Channels = channels,
        Pairs = [],
    };

    public static ChannelResult Channel(string name, Grade verdict, ImmutableArray<Trial> trials, Func<Trial, CellResult> cell) => new()
    {
        Name = name,
        Label = name,
        RateHz = 2000,
        BandFromHz = 20,
        BandToHz = 450,
        Verdict = verdict,
        Reasons = [],
        NotAssessed = [],
        Measures = Numbers,
        Findings = [],
        Cells = [.. trials.Select(trial => cell(trial) with { Trial = trial.Number })],
    };

    public static CellResult Cell(Grade verdict, params ImmutableArray<string> reasons) =>
        new() { Trial = 0, Verdict = verdict, Reasons = reasons, NotAssessed = [], Measures = Numbers, Findings = [] };

    public static Trial OneTrial(int number, decimal onsetS, decimal durationS, string label, TrialRole role = TrialRole.Scored) => new()
    {
        Number = number,
        Label = label,
        Role = role,
        OnsetS = onsetS,
        DurationS = durationS,
        WindowFromS = onsetS,
        WindowToS = onsetS + durationS,
    };

    public static Finding OneFinding(
        string reason, Grade grade, ImmutableArray<string> channels, double fromS, double toS, string measure, double value, string unit, int? trial = null, string cause = "") => new()
        {
            Reason = reason,
            Grade = grade,
            Channels = channels,
            Trial = trial,
            FromS = fromS,
            ToS = toS,
            Evidence = [new Evidence(measure, value, unit, value / 2)],
            Text = "What was seen.",
            Cause = cause,
        };

    private static CellResult WithFinding(string reason, Trial trial) => Cell(Grade.Reject, reason) with
    {
        Findings = [OneFinding(reason, Grade.Reject, ["eye"], (double)trial.WindowFromS, (double)trial.WindowToS, "clipped", 20, "%", trial: trial.Number)],
    };

    private static ChannelResult Numbered(int number, ImmutableArray<Trial> trials)
    {
        string name = "site " + number.ToString("00", System.Globalization.CultureInfo.InvariantCulture);
        Finding mains = OneFinding(ReasonCode.LineNoise, Grade.Reject, [name], 100, 260, "line_rms", number, "uV", cause: "a loose lead");
        Finding drift = OneFinding(ReasonCode.Drift, Grade.Questionable, [name], 0, 260, "drift_slope", 300, "uV/min");
        return (number % 7) switch
        {
            0 => Channel(name, Grade.Reject, trials, trial => trial.Number > 9 ? Cell(Grade.Reject, ReasonCode.LineNoise) : Cell(Grade.Pass)) with { Reasons = [ReasonCode.LineNoise], Findings = [mains] },
            3 => Channel(name, Grade.Questionable, trials, trial => trial.Number % 5 == 0 ? Cell(Grade.Questionable, ReasonCode.Drift) : Cell(Grade.Pass)) with { Reasons = [ReasonCode.Drift], Findings = [drift] },
            _ => Channel(name, Grade.Pass, trials, _ => Cell(Grade.Pass)),
        };
    }
}
