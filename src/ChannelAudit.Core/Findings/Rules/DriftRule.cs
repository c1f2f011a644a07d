using System.Collections.Immutable;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>A wandering baseline, or too little room to the rails.</summary>
internal static class DriftRule
{
    /// <summary>Judges a window.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        string? note = window.NoteOf("drift_slope");

        // What scoring takes away is known not to matter: nothing is left open by it.
        string? scoredAway = WindowMeasures.DriftScoredAway(window.Channel.Frame.Filter);
        string? hidden = string.Equals(note, scoredAway, StringComparison.Ordinal) ? null : note;
        LimitJudgement judged = window.Judge(ReasonCode.Drift);
        if (judged.Grade == Grade.Pass)
        {
            return RuleOutcome.None(ReasonCode.Drift, hidden);
        }

        return new RuleOutcome(
            ReasonCode.Drift,
            judged.Grade,
            judged.Evidence,
            string.Join(", ", judged.Evidence.Select(Words)),
            "the contact is settling, sweating or loose, or an electrode offset has built up",
            hidden);
    }

    private static string Words(Evidence evidence) => evidence.Measure switch
    {
        "headroom" => $"only {Say.Number(evidence.Value)} % of the range left to the rail",
        "drift_slope" => $"baseline drifts {Say.Number(evidence.Value)} µV/min",
        _ => $"baseline ranges over {Say.Number(evidence.Value)} µV",
    };
}
