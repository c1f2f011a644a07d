using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Samples at a rail: peaks are cut off, amplitudes too small.</summary>
internal static class ClippingRule
{
    /// <summary>Judges a window.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        if (window.Reading.Window.Stored == 0 || !window.Channel.Time.Rails.AnyKnown)
        {
            return RuleOutcome.None(ReasonCode.Clipping, window.NoteOf("clipped"));
        }

        LimitJudgement judged = window.Judge(ReasonCode.Clipping);
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.Clipping, window.NoteOf("clipped"))
            : new RuleOutcome(
                ReasonCode.Clipping,
                judged.Grade,
                judged.Evidence,
                $"{Say.Number(window.ValueOf("clipped") ?? 0)} % of samples at a rail, longest run {Say.Number(window.ValueOf("clipped_run") ?? 0)} ms",
                window.Channel.Time.Rails is { LowerHidden: false, UpperHidden: false }
                    ? "the signal is larger than the recording can hold: gain too high, or an electrode moved"
                    : "the amplifier saturates below the limits of the file: gain too high, or an electrode offset",
                Stretch: window.StretchOf(window.Channel.Clipped));
    }
}
