using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Rules;

/// <summary>One window of one channel, as a rule sees it.</summary>
internal sealed class WindowCase : IMeasured
{
    private readonly ImmutableArray<MeasureValue> measures;

    /// <summary>Puts a window before the rules.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="reading">What was measured.</param>
    /// <param name="isWhole">Whether it is the whole recording.</param>
    /// <param name="criteria">All limits.</param>
    /// <param name="contraction">The answer to a task of this channel; null for a window that asks nothing of it.</param>
    public WindowCase(ChannelSurvey channel, WindowReading reading, bool isWhole, AuditCriteria criteria, ContractionAnswer? contraction = null)
    {
        Asks = contraction is not null;
        Channel = channel;
        Reading = reading;
        IsWhole = isWhole;
        Criteria = criteria;
        measures = WindowMeasures.Of(reading, channel, isWhole, contraction ?? new ContractionAnswer(null, "no task asked of it"));
    }

    private WindowCase(WindowCase window, AuditCriteria criteria)
    {
        (Asks, Channel, Reading, IsWhole, measures) = (window.Asks, window.Channel, window.Reading, window.IsWhole, window.measures);
        Criteria = criteria;
    }

    /// <summary>The channel.</summary>
    public ChannelSurvey Channel { get; }

    /// <summary>What was measured.</summary>
    public WindowReading Reading { get; }

    /// <summary>Whether this is the whole recording, which grades the channel only.</summary>
    public bool IsWhole { get; }

    /// <summary>Whether this window asks the channel's muscle for a contraction.</summary>
    public bool Asks { get; }

    /// <summary>All limits.</summary>
    public AuditCriteria Criteria { get; }

    /// <summary>The measures in catalog order.</summary>
    public ImmutableArray<MeasureValue> Measures => measures;

    /// <summary>Whether the muscle was active in this window.</summary>
    public bool IsActive => !IsWhole && Reading.EmgPower is { } power && Channel.Quiet.IsActive(power);

    /// <summary>The same window before other limits.</summary>
    public WindowCase Before(AuditCriteria criteria) => new(this, criteria);

    /// <summary>A measure's value, or null.</summary>
    public double? ValueOf(string measure) => Find(measure).Value;

    /// <summary>Why a measure has no value, or null.</summary>
    public string? NoteOf(string measure) => Find(measure).Note;

    /// <summary>Null when a measure has a value, otherwise why it has none.</summary>
    public string? WhyNone(string measure) => ValueOf(measure) is null ? NoteOf(measure) ?? "no value" : null;

    /// <summary>For the whole recording: from the first to the last of some ranges, in seconds; null for a trial.</summary>
    public (double FromS, double ToS)? StretchOf(SampleRanges ranges) => IsWhole && ranges.All.Count > 0
        ? (ranges.All[0].From / Reading.RateHz, ranges.All[^1].To / Reading.RateHz)
        : null;

    /// <summary>The window's values against the limits of a reason, those for trials or those for the whole channel.</summary>
    public LimitJudgement Judge(string reason)
    {
        Criterion criterion = Criteria.For(reason);
        return IsWhole
            ? LimitJudgement.Of(criterion.ChannelQuestionable, criterion.ChannelReject, this)
            : LimitJudgement.Of(criterion.Questionable, criterion.Reject, this);
    }

    /// <summary>The window's values against some of the limits of a reason.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="ofChannel">Whether the limits of the channel are asked, or those of trials.</param>
    /// <param name="applies">Which alternatives are asked.</param>
    public LimitJudgement Judge(string reason, bool ofChannel, Func<LimitSet, bool> applies)
    {
        Criterion criterion = Criteria.For(reason);
        return ofChannel
            ? LimitJudgement.Of([.. criterion.ChannelQuestionable.Where(applies)], [.. criterion.ChannelReject.Where(applies)], this)
            : LimitJudgement.Of([.. criterion.Questionable.Where(applies)], [.. criterion.Reject.Where(applies)], this);
    }

    // Asked some hundred times a trial and set of limits.
    private MeasureValue Find(string measure) => MeasureCatalog.PlaceOf(measure) is { } place ? measures[place] : default;
}
