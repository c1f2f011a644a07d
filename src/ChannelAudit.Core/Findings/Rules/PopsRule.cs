using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Short, isolated spikes.</summary>
/// <remarks>A single one beside a slow swing at a site that sees lids can be the burst of a blink: questionable at most.</remarks>
internal static class PopsRule
{
    /// <summary>Judges a window.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        if (window.NoteOf("pops") is { } open)
        {
            return RuleOutcome.None(ReasonCode.Pops, open);
        }

        LimitJudgement judged = window.Judge(ReasonCode.Pops);
        PopCount pops = window.Reading.Pops;
        bool isBlink = pops.Count == 1 && LowFrequencyRule.MayHoldBlink(window);
        string share = pops.SharePercent is { } percent ? $" with {Say.Number(percent)} % of the energy" : string.Empty;
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.Pops)
            : new RuleOutcome(
                ReasonCode.Pops,
                isBlink ? Grade.Questionable : judged.Grade,
                judged.Evidence,
                FormattableString.Invariant($"{pops.Count} short {(pops.Count == 1 ? "spike" : "spikes")}{share}{(isBlink ? ", where the lid may have moved" : string.Empty)}"),
                isBlink ? "the lid's own burst in a blink, or a contact that makes and breaks" : "a plug or lead that makes and breaks contact, drying gel, or a discharge");
    }
}
