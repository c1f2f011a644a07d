using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Samples that are not there: a gap, missing values, or a trial beyond the recording.</summary>
internal static class DropoutRule
{
    /// <summary>Judges a window.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        LimitJudgement judged = window.Judge(ReasonCode.Dropout);
        if (judged.Grade == Grade.Pass)
        {
            return RuleOutcome.None(ReasonCode.Dropout);
        }

        bool isOutside = window.Reading.Window.End > window.Channel.Channel.TimelineLength || window.Reading.Window.Start < 0;
        return new RuleOutcome(
            ReasonCode.Dropout,
            judged.Grade,
            judged.Evidence,
            $"{Say.Number(window.ValueOf("missing") ?? 0)} % of samples missing, longest gap {Say.Milliseconds(window.ValueOf("gap") ?? 0)}",
            isOutside
                ? "the trial runs past the recording: it was stopped early, or the events belong to another recording"
                : "the recording was interrupted, or samples were lost on the way to the file");
    }
}
