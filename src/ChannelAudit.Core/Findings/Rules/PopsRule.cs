using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Short, isolated spikes.</summary>
/// <remarks>
/// Two kinds are questionable at most. A single one beside a slow swing at a site that sees lids can be the burst of a blink; spikes that all have their energy
/// where a muscle's lies, in a trial in which the muscle is active beside them, can be a large unit's.
/// </remarks>
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
        bool isUnit = pops.MuscleLike == pops.Count && IsActiveBeside(window);
        string share = pops.SharePercent is { } percent ? $" with {Say.Number(percent)} % of the energy" : string.Empty;
        string how = isBlink ? ", where the lid may have moved" : isUnit ? ", in shape like the muscle's own, while it is active" : string.Empty;
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.Pops)
            : new RuleOutcome(
                ReasonCode.Pops,
                isBlink || isUnit ? Grade.Questionable : judged.Grade,
                judged.Evidence,
                FormattableString.Invariant($"{pops.Count} short {(pops.Count == 1 ? "spike" : "spikes")}{share}{how}"),
                CauseOf(isBlink, isUnit));
    }

    /// <summary>Whether the muscle is active even without the energy that the spikes hold.</summary>
    private static bool IsActiveBeside(WindowCase window) =>
        !window.IsWhole && window.Reading.EmgPower is { } power && window.Reading.Pops.SharePercent is { } share
        && window.Channel.Quiet.IsActive(power * (1 - (share / 100)));

    private static string CauseOf(bool isBlink, bool isUnit) => (isBlink, isUnit) switch
    {
        (true, _) => "the lid's own burst in a blink, or a contact that makes and breaks",
        (_, true) => "a large motor unit of the muscle, or a contact that makes and breaks",
        _ => "a plug or lead that makes and breaks contact, drying gel, or a discharge",
    };
}
