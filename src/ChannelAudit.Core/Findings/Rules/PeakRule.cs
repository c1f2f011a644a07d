using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Line noise and narrow peaks: amplitude and ratio must both be reached, few segments must stand 4 standard errors clear, and an
/// active trial takes what the quiet stretches around it say.</summary>
/// <remarks>
/// Judged is the raw reading, or what the scoring filter leaves of it: the limits then name the surviving measures. A limit on the score, in percent or in µV, is asked
/// of the window alone: what a contraction hides changes its score little.
/// </remarks>
internal abstract class PeakRule
{
    private const int FewSegments = 3;
    private const double ClearErrors = 4;

    private readonly Criterion criterion;
    private readonly SegmentGrades quiet;
    private readonly string name;
    private readonly string rms;
    private readonly string left;
    private readonly string effect;
    private readonly string shift;

    /// <summary>Prepares to judge.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="criterion">The limits.</param>
    /// <param name="behind">Whether what the scoring filter leaves is judged.</param>
    /// <param name="name">What the names of the measures start with: <c>line</c>.</param>
    /// <param name="rawOf">A segment's raw reading.</param>
    /// <param name="leftOf">What the filter leaves of it.</param>
    protected PeakRule(
        ChannelSurvey channel, Criterion criterion, bool behind, string name, Func<int, PeakReading> rawOf, Func<int, PeakReading> leftOf)
    {
        Channel = channel;
        Behind = behind;
        this.criterion = criterion;
        this.name = name;
        (rms, left, effect, shift) = (name + "_rms", name + "_left", name + "_effect", name + "_shift");
        quiet = new SegmentGrades(
            channel,
            channel.Quiet.Quiet,
            behind ? leftOf : rawOf,
            segment => GradeOf(
                new PeakCase(rawOf(segment), channel.Segments.BandPower[segment], leftOf(segment), channel.Segments.BandLeft[segment], 1, null, null)),
            behind ? segment => rawOf(segment).Rms : segment => leftOf(segment).Rms);
    }

    /// <summary>The channel.</summary>
    protected ChannelSurvey Channel { get; }

    /// <summary>Whether what the scoring filter leaves is judged.</summary>
    protected bool Behind { get; }

    /// <summary>Whether the sides of a trial must agree on a frequency before they speak.</summary>
    protected abstract bool MustAgree { get; }

    private string JudgedRms => Behind ? left : rms;

    /// <summary>Judges a window.</summary>
    public RuleOutcome Judge(WindowCase window)
    {
        string? hidden = window.NoteOf(rms) ?? (Behind ? window.NoteOf(left) : null);
        if (hidden is not null || CaseOf(window) is not { } found)
        {
            return RuleOutcome.None(criterion.Reason, hidden ?? "no spectrum");
        }

        LimitJudgement own = Judge(window, found);
        (Grade inherited, SideReading? speaks) = window.IsActive ? Inherited(window.Reading) : (Grade.Pass, null);
        if (inherited > own.Grade && speaks is { } side)
        {
            double rest = Behind ? side.Rms : side.Other;
            string seen = Words(Behind ? side.Other : side.Rms, rest, null, side.Hz);
            return Found(inherited, [new Evidence(JudgedRms, side.Rms, "uV", LimitOf(inherited))], seen + " in the quiet stretches around it", side.Hz, window)
                with
            { FromQuietStretches = true, InheritedPower = rest * rest };
        }

        if (own.Grade == Grade.Pass)
        {
            return RuleOutcome.None(criterion.Reason, Unspoken(window));
        }

        PeakReading judged = Behind ? found.Left : found.Raw;
        PeakReading raw = Behind ? RawBehind(window.Reading, found) : found.Raw;
        string text = Words(raw.Rms, found.Left.Rms, RatioOf(found, Behind), judged.Hz);
        return Found(own.Grade, own.Evidence, text + Rescue(window, found, own.Grade), judged.Hz, window);
    }

    /// <summary>The reading of this rule in a window, raw or behind the filter.</summary>
    protected abstract PeakReading? ReadingOf(WindowReading reading, bool behind);

    /// <summary>The judged reading of this rule at a frequency in a window.</summary>
    protected abstract PeakReading ReadingAt(WindowReading reading, double hz);

    /// <summary>The raw reading of what is left in a window.</summary>
    protected virtual PeakReading RawBehind(WindowReading reading, PeakCase found) => found.Raw;

    /// <summary>The muscle power that a reading is held against.</summary>
    protected virtual double MuscleOf(PeakReading reading, double emgPower) => emgPower;

    /// <summary>What a notch would do, in words; empty when there is nothing to say.</summary>
    protected virtual string Rescue(WindowCase window, PeakCase found, Grade grade) => string.Empty;

    /// <summary>What was seen, in words.</summary>
    /// <param name="raw">The raw amplitude.</param>
    /// <param name="left">What the scoring filter leaves of it.</param>
    /// <param name="ratioDb">The judged one against the muscle; null: not said.</param>
    /// <param name="hz">Its frequency.</param>
    protected abstract string Words(double raw, double left, double? ratioDb, double hz);

    /// <summary>The likely cause.</summary>
    protected abstract string CauseOf(double hz);

    /// <summary>An amplitude in words: raw and left side by side where what is left is judged.</summary>
    protected string Amplitude(double raw, double left) => Behind
        ? $"{Say.Number(raw)} µV raw, {Say.Number(left)} µV behind the scoring filter ({Channel.Frame.Filter.InWords})"
        : $"{Say.Number(raw)} µV";

    /// <summary>The grade that the quiet stretches around a window give it.</summary>
    protected Grade InheritedGrade(WindowReading reading) => Inherited(reading).Grade;

    /// <summary>The judgement of a window's own readings.</summary>
    protected LimitJudgement Judge(WindowCase window, PeakCase found) => Own(
        found,
        window.IsWhole ? criterion.ChannelQuestionable : criterion.Questionable,
        window.IsWhole ? criterion.ChannelReject : criterion.Reject);

    private PeakCase? CaseOf(WindowCase window) =>
        ReadingOf(window.Reading, false) is { } raw && window.Reading.EmgPower is { } emg
            && ReadingOf(window.Reading, true) is { } remaining && window.Reading.Left?.EmgPower is { } emgLeft
            ? new PeakCase(
                raw, emg, remaining, emgLeft, Math.Max(1, window.Reading.Segments), window.ValueOf(effect), window.ValueOf(shift))
            : null;

    private double? RatioOf(PeakCase found, bool behind) => behind
        ? found.Left.RatioDb(MuscleOf(found.Left, found.EmgLeft))
        : found.Raw.RatioDb(MuscleOf(found.Raw, found.Emg));

    private LimitJudgement Own(PeakCase found, ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject) => IsClear(found)
        ? LimitJudgement.Of(questionable, reject, new PeakValues(this, found))
        : new LimitJudgement(Grade.Pass, []);

    private Grade GradeOf(PeakCase found) => IsClear(found)
        ? LimitJudgement.GradeOf(criterion.Questionable, criterion.Reject, new PeakValues(this, found))
        : Grade.Pass;

    private bool IsClear(PeakCase found)
    {
        PeakReading judged = Behind ? found.Left : found.Raw;
        return found.Segments > FewSegments || !(judged.Power < ClearErrors * judged.StandardError);
    }

    private double? ValueOf(PeakCase found, string measure) => measure.AsSpan(name.Length) switch
    {
        "_rms" => found.Raw.Rms,
        "_ratio" => RatioOf(found, false),
        "_left" => found.Left.Rms,
        "_left_ratio" => RatioOf(found, true),
        "_effect" => found.EffectPercent,
        "_shift" => found.ShiftUv,
        _ => null,
    };

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
        .FirstOrDefault(limit => string.Equals(limit.Measure, JudgedRms, StringComparison.Ordinal))?.Value ?? 0;

    private RuleOutcome Found(Grade grade, ImmutableArray<Evidence> evidence, string text, double hz, WindowCase window) => new(
        criterion.Reason,
        grade,
        evidence,
        text,
        CauseOf(hz),
        Stretch: window.IsWhole ? quiet.StretchOf(Grade.Questionable) : null);

    /// <summary>The numbers of a case by the names of this rule's measures.</summary>
    private readonly record struct PeakValues(PeakRule Rule, PeakCase Found) : IMeasured
    {
        public double? ValueOf(string measure) => Rule.ValueOf(Found, measure);
    }
}
