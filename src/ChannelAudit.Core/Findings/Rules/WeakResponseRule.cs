using ChannelAudit.Measures;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>No answer, or a weak one, to the contraction that was asked for.</summary>
internal static class WeakResponseRule
{
    /// <summary>Judges a window: a trial that asks this muscle, or the best of them for the whole recording.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        if (window.ValueOf("contraction_snr") is not { } snr)
        {
            // Other trials ask nothing of this muscle, so nothing is missing there.
            return RuleOutcome.None(ReasonCode.WeakResponse, window.IsWhole || window.Asks ? window.NoteOf("contraction_snr") : null);
        }

        LimitJudgement judged = window.Judge(ReasonCode.WeakResponse);
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.WeakResponse)
            : new RuleOutcome(
                ReasonCode.WeakResponse,
                judged.Grade,
                judged.Evidence,
                snr <= ContractionSnr.FloorDb ? "no contraction seen" : $"the contraction stands only {Say.Number(snr)} dB above rest",
                "the task was not done, the electrodes are not over this muscle, they are joined by gel, or a lead is off");
    }
}
