using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Line noise and narrow peaks: amplitude and ratio must both be reached, few segments must stand 4 standard errors clear, and an
/// active trial takes what the quiet stretches around it say.</summary>
internal abstract class PeakRule
{
    private const int FewSegments = 3;
    private const double ClearErrors = 4;

    private readonly Criterion criterion;
    private readonly SegmentGrades quiet;

    protected PeakRule(ChannelSurvey channel, Criterion criterion, Func<int, PeakReading> readingOf)
    {
        Channel = channel;
        this.criterion = criterion;
        quiet = SegmentGrades.Of(
            channel,
            channel.Quiet.Quiet,
            readingOf,
            (segment, reading) => Own(reading, channel.Segments.BandPower[segment], 1, criterion.Questionable, criterion.Reject).Grade);
    }

    /// <summary>The channel.</summary>
    protected ChannelSurvey Channel { get; }

    /// <summary>The name of the amplitude measure.</summary>
    protected abstract string RmsMeasure { get; }

    /// <summary>The name of the ratio measure.</summary>
    protected abstract string RatioMeasure { get; }

    /// <summary>Whether the sides of a trial must agree on a frequency before they speak.</summary>
    protected abstract bool MustAgree { get; }

    /// <summary>Judges a window.</summary>
    public RuleOutcome Judge(WindowCase window)
    {
        string? hidden = window.NoteOf(RmsMeasure);
        if (hidden is not null || ReadingOf(window.Reading) is not { } reading || window.Reading.EmgPower is not { } emg)
        {
            return RuleOutcome.None(criterion.Reason, hidden ?? "no spectrum");
        }

        LimitJudgement own = Own(
            reading,
            emg,
            Math.Max(1, window.Reading.Segments),
            window.IsWhole ? criterion.ChannelQuestionable : criterion.Questionable,
            window.IsWhole ? criterion.ChannelReject : criterion.Reject);
        (Grade inherited, SideReading? speaks) = window.IsActive ? Inherited(window.Reading) : (Grade.Pass, null);
        if (inherited > own.Grade && speaks is { } side)
        {
            return Found(inherited, [new Evidence(RmsMeasure, side.Rms, "uV", LimitOf(inherited))], side.Rms, null, side.Hz, window, true);
        }

        return own.Grade == Grade.Pass
            ? RuleOutcome.None(criterion.Reason, Unspoken(window))
            : Found(own.Grade, own.Evidence, reading.Rms, reading.RatioDb(MuscleOf(reading, emg)), reading.Hz, window, false);
    }

    /// <summary>The reading of this rule in a window.</summary>
    protected abstract PeakReading? ReadingOf(WindowReading reading);

    /// <summary>The reading of this rule at a frequency in a window.</summary>
    protected abstract PeakReading ReadingAt(WindowReading reading, double hz);

    /// <summary>The muscle power that a reading is held against.</summary>
    protected virtual double MuscleOf(PeakReading reading, double emgPower) => emgPower;

    /// <summary>What was seen, in words.</summary>
    protected abstract string Words(double rms, double? ratioDb, double hz);

    /// <summary>The likely cause.</summary>
    protected abstract string CauseOf(double hz);

    private LimitJudgement Own(
        PeakReading reading, double emg, int segments, ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject)
    {
        if (segments <= FewSegments && reading.Power < ClearErrors * reading.StandardError)
        {
            return new LimitJudgement(Grade.Pass, []);
        }

        double? ratio = reading.RatioDb(MuscleOf(reading, emg));
        return LimitJudgement.Of(
            questionable,
            reject,
            measure => string.Equals(measure, RmsMeasure, StringComparison.Ordinal) ? reading.Rms
                : string.Equals(measure, RatioMeasure, StringComparison.Ordinal) ? ratio : null);
    }

    private (Grade Grade, SideReading? Speaks) Inherited(WindowReading reading)
    {
        SideReading? before = Speaking(quiet.Before(reading.Window.Start));
        SideReading? after = Speaking(quiet.After(reading.Window.End));
        return Inheritance.Of(before, after, hz => ReadingAt(reading, hz).UpperRms);
    }

    private SideReading? Speaking(SideReading? side) =>
        side is { } reading && MustAgree && !reading.IsOneFrequency ? reading with { Grade = Grade.Pass } : side;

    /// <summary>An active trial without a quiet second before or behind it: the contraction may hide the fault.</summary>
    private string? Unspoken(WindowCase window) =>
        window.IsActive && quiet.Before(window.Reading.Window.Start) is null && quiet.After(window.Reading.Window.End) is null
            ? "the muscle is active and no quiet second lies before or after"
            : null;

    private double LimitOf(Grade grade) =>
        (grade == Grade.Reject ? criterion.Reject : criterion.Questionable)
        .SelectMany(set => set.Limits)
        .FirstOrDefault(limit => string.Equals(limit.Measure, RmsMeasure, StringComparison.Ordinal))?.Value ?? 0;

    private RuleOutcome Found(
        Grade grade, ImmutableArray<Evidence> evidence, double rms, double? ratio, double hz, WindowCase window, bool inherited) => new(
        criterion.Reason,
        grade,
        evidence,
        Words(rms, ratio, hz) + (inherited ? " in the quiet stretches around it" : string.Empty),
        CauseOf(hz),
        null,
        inherited,
        window.IsWhole ? quiet.StretchOf(Grade.Questionable) : null);
}
