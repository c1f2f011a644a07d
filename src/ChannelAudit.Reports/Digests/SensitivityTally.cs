using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Digests;

/// <summary>Adds up over a run how many verdicts hang on the limits; counts only, whatever the number of recordings.</summary>
/// <param name="criteria">The limits in force.</param>
public sealed class SensitivityTally(AuditCriteria criteria)
{
    private readonly Dictionary<(string Reason, double Factor), (GradeCounts Trials, GradeCounts Channels)> _differences = [];
    private GradeCounts _trials;
    private GradeCounts _channels;

    /// <summary>Recordings that were counted.</summary>
    public int Recordings { get; private set; }

    /// <summary>Recordings whose result says nothing of it.</summary>
    public int Without { get; private set; }

    /// <summary>The limits in force.</summary>
    public MovedLimits InForce => new(MovedLimits.AllReasons, 1, _trials, _channels);

    /// <summary>All rows: the limits in force among those of all limits moved, then each reason's, by factor.</summary>
    public ImmutableArray<MovedLimits> Rows =>
    [
        .. MovedLimits.Factors.Append(1).Order().Select(factor => Row(MovedLimits.AllReasons, factor)),
        .. criteria.All.SelectMany(criterion => MovedLimits.Factors.Append(1).Order().Select(factor => Row(criterion.Reason, factor))),
    ];

    /// <summary>Reasons whose limits change any verdict, those that change the most rejected trials first, then questionable ones.</summary>
    public ImmutableArray<string> ReasonsThatMatter =>
    [
        .. criteria.All.Select(criterion => criterion.Reason)
            .Where(reason => Swing(reason, _ => 1) > 0)
            .OrderByDescending(reason => Swing(reason, counts => counts.Trials.Reject))
            .ThenByDescending(reason => Swing(reason, counts => counts.Trials.Questionable))
            .ThenByDescending(reason => Swing(reason, counts => counts.Channels.Reject + counts.Channels.Questionable)),
    ];

    /// <summary>Those of <see cref="ReasonsThatMatter"/> whose limits change the verdict of a trial; the others change channels alone.</summary>
    public ImmutableArray<string> ReasonsOfTrials =>
        [.. ReasonsThatMatter.Where(reason => Swing(reason, counts => counts.Trials.Reject) + Swing(reason, counts => counts.Trials.Questionable) > 0)];

    /// <summary>Adds a recording.</summary>
    /// <param name="rows">What its result says; null when it says nothing.</param>
    public void Add(ImmutableArray<MovedLimits>? rows)
    {
        if (rows is not { } known || known.FirstOrDefault(row => row.Factor is 1) is not { } own)
        {
            Without++;
            return;
        }

        Recordings++;
        _trials = _trials.Plus(own.Trials);
        _channels = _channels.Plus(own.Channels);
        foreach (MovedLimits row in known.Where(row => row.Factor is not 1))
        {
            (GradeCounts trials, GradeCounts channels) = _differences.GetValueOrDefault((row.Reason, row.Factor));
            _differences[(row.Reason, row.Factor)] = (trials.Plus(row.Trials.Minus(own.Trials)), channels.Plus(row.Channels.Minus(own.Channels)));
        }
    }

    /// <summary>The counts with a reason's limits moved.</summary>
    /// <param name="reason">The reason, or <see cref="MovedLimits.AllReasons"/>.</param>
    /// <param name="factor">The factor.</param>
    public MovedLimits Row(string reason, double factor)
    {
        (GradeCounts trials, GradeCounts channels) = _differences.GetValueOrDefault((reason, factor));
        return new MovedLimits(reason, factor, _trials.Plus(trials), _channels.Plus(channels));
    }

    /// <summary>How far a number moves over all factors, added up.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="number">The number of a row, or of the difference of two.</param>
    public int Swing(string reason, Func<(GradeCounts Trials, GradeCounts Channels), int> number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return MovedLimits.Factors
            .Select(factor => _differences.GetValueOrDefault((reason, factor)))
            .Where(difference => difference != default)
            .Sum(difference => Math.Abs(number(difference)));
    }
}
