using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Short, isolated spikes.</summary>
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
        string share = pops.SharePercent is { } percent ? $" with {Say.Number(percent)} % of the energy" : string.Empty;
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.Pops)
            : new RuleOutcome(
                ReasonCode.Pops,
                judged.Grade,
                judged.Evidence,
                FormattableString.Invariant($"{pops.Count} short {(pops.Count == 1 ? "spike" : "spikes")}{share}"),
                "a plug or lead that makes and breaks contact, drying gel, or a discharge");
    }
}
