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
            return RuleOutcome.None(ReasonCode.WeakResponse, WhyOpen(window));
        }

        LimitJudgement judged = window.Judge(ReasonCode.WeakResponse, window.IsWhole, CollapseRule.AsksForTask);
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.WeakResponse)
            : new RuleOutcome(
                ReasonCode.WeakResponse,
                judged.Grade,
                judged.Evidence,
                snr <= ContractionSnr.FloorDb ? "no contraction seen" : $"the contraction stands only {Say.Number(snr)} dB above rest",
                "the task was not done, the electrodes are not over this muscle, they are joined by gel, or a lead is off");
    }

    // Other trials ask nothing of this muscle, so nothing is missing there. Without any task the channel is still judged
    // by whether it holds anything at all, if a limit asks for that.
    private static string? WhyOpen(WindowCase window) =>
        window.Asks ? window.NoteOf("contraction_snr")
        : !window.IsWhole ? null
        : !CollapseRule.IsAsked(window.Criteria) ? window.NoteOf("contraction_snr")
        : CollapseRule.WhyOpen(window) is { } why ? $"{window.NoteOf("contraction_snr")}; and without one: {why}"
        : null;
}
