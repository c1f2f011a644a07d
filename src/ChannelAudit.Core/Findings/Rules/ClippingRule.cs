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
            ? RuleOutcome.None(ReasonCode.Clipping, window.NoteOf("clipped") ?? Hidden(window))
            : new RuleOutcome(
                ReasonCode.Clipping,
                judged.Grade,
                judged.Evidence,
                $"{Say.Number(window.ValueOf("clipped") ?? 0)} % of samples at a rail, longest run {Say.Milliseconds(window.ValueOf("clipped_run") ?? 0)}",
                window.Channel.Time.Rails is { LowerHidden: false, UpperHidden: false }
                    ? "the signal is larger than the recording can hold: gain too high, or an electrode moved"
                    : "the amplifier saturates below the limits of the file: gain too high, or an electrode offset",
                Hidden(window),
                Stretch: window.StretchOf(window.Channel.Clipped));
    }

    /// <summary>Why more may be cut off than is seen, or null: behind a filter a plateau is level no more, and no rail says where it was.</summary>
    /// <remarks>A high-pass is said once for the channel: most amplifiers have one in front of the converter, whose own rails are seen.</remarks>
    private static string? Hidden(WindowCase window) =>
        window.Channel.Channel.Prefilter.Software is { } filters ? $"filtered after digitising ({filters}): what was cut off before may be hidden"
        : window is { IsWhole: true, Channel.Time.Rails: { LowerHidden: false, UpperHidden: false } } && (window.Channel.DriftHidden ?? window.Channel.MotionHidden) is { } highpass ? $"{highpass}; what was cut off before it may be hidden"
        : null;
}
