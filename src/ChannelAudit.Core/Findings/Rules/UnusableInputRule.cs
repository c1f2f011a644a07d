using ChannelAudit.Recordings;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Samples that are no raw signal in a believable unit and resolution: questionable, since nobody can say what they show.</summary>
internal static class UnusableInputRule
{
    /// <summary>Judges a window; what is wrong with the input is so everywhere.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        Channel channel = window.Channel.Channel;
        (string? text, string cause) = channel.NotRaw is { } notRaw
            ? (notRaw, "the recorder or a program processed the signal before it was stored")
            : channel.UnitDoubt is { } unit
                ? (unit, "mV or V called uV, raw codes without a unit, or nothing was connected: say the unit in the setup, or look at the amplifier")
                : window.Channel.Time.FlatLimits.IsCoarse
                    ? ("the resolution is too coarse: a step of the file is larger than the noise", "the gain is too low for the converter, or the file was rounded")
                    : ((string?)null, string.Empty);
        return text is null
            ? RuleOutcome.None(ReasonCode.UnusableInput)
            : new RuleOutcome(ReasonCode.UnusableInput, Grade.Questionable, [], text, cause);
    }
}
