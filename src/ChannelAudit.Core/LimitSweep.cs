using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit;

/// <summary>Judges the same readings by limits that tolerate more or less: on which limits do the exclusions hang?</summary>
/// <remarks>
/// Every factor is judged once, with all limits moved. What one reason alone would change follows from that: its grades with its limits moved, the grades of
/// all others with the limits in force.
/// </remarks>
internal static class LimitSweep
{
    /// <summary>The counts: the limits in force, all limits moved, then each reason's that changes anything at any factor.</summary>
    /// <param name="readings">What was read.</param>
    /// <param name="criteria">The limits in force.</param>
    /// <param name="cancellation">Checked for each factor.</param>
    public static ImmutableArray<MovedLimits> Of(AuditReadings readings, AuditCriteria criteria, CancellationToken cancellation)
    {
        GradeTable now = GradeTable.Of(readings, criteria);
        Criterion share = criteria.For(BadTrialShare.Reason);
        MovedLimits inForce = Row(MovedLimits.AllReasons, 1, now, now, -1, share);
        List<(double Factor, GradeTable Moved, Criterion Share)> tried = [];
        foreach (double factor in MovedLimits.Factors)
        {
            cancellation.ThrowIfCancellationRequested();
            AuditCriteria moved = ScaledLimits.Of(criteria, factor);
            tried.Add((factor, GradeTable.Of(readings, moved), moved.For(BadTrialShare.Reason)));
        }

        return
        [
            inForce,
            .. tried.Select(one => Row(MovedLimits.AllReasons, one.Factor, one.Moved, one.Moved, -1, one.Share)),
            .. criteria.All.SelectMany(criterion => OfReason(criterion.Reason, now, share, tried, inForce)),
        ];
    }

    private static MovedLimits[] OfReason(
        string reason, GradeTable now, Criterion share, List<(double Factor, GradeTable Moved, Criterion Share)> tried, MovedLimits inForce)
    {
        // The share of bad trials is no reason that a trial can have.
        int place = ReasonCode.All.IndexOf(reason);
        MovedLimits[] rows = [.. tried.Select(one => Row(reason, one.Factor, now, one.Moved, place, place < 0 ? one.Share : share))];
        return Array.TrueForAll(rows, row => row.Trials == inForce.Trials && row.Channels == inForce.Channels) ? [] : rows;
    }

    private static MovedLimits Row(string reason, double factor, GradeTable table, GradeTable moved, int place, Criterion share)
    {
        GradeCounts trials = default;
        GradeCounts channels = default;
        for (int channel = 0; channel < table.Channels; channel++)
        {
            GradeCounts own = table.TrialsWith(channel, place, moved);
            Grade whole = table.WholeWith(channel, place, moved);
            Grade bad = BadTrialShare.GradeOf(own, share);
            trials = trials.Plus(own);
            channels = channels.Plus(bad > whole ? bad : whole);
        }

        return new MovedLimits(reason, factor, trials, channels);
    }
}
