using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Raters;

/// <summary>What always has to be said beside a limit that agrees best with labels.</summary>
internal static class RaterWords
{
    /// <summary>The caution in a clause.</summary>
    public const string Elsewhere = "chosen on these labels: judge it on other recordings before it is used";

    /// <summary>Why no limit is named, or the caution beside the one that is.</summary>
    public static string Note(MeasureAgainstPeople curve) =>
        curve.Best is not null ? Elsewhere : curve.HasEnough ? "no limit agrees better than calling nothing" : TooFew(curve);

    /// <summary>That labels are too few.</summary>
    public static string TooFew(MeasureAgainstPeople curve) =>
        $"no limit is named: it takes {RatedSet.LeastLabels.Plain()} labels of each kind, here are {curve.Labels.Reject.Plain()} reject and {curve.Labels.Other.Plain()} other";
}
