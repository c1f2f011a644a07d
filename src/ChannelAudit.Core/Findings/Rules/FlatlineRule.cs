using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>No signal: equal codes, or hardly any movement for 100 ms.</summary>
internal static class FlatlineRule
{
    /// <summary>Judges a window.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        if (window.Reading.Window.Stored == 0)
        {
            return RuleOutcome.None(ReasonCode.Flatline, window.NoteOf("flat"));
        }

        string? coarse = window.NoteOf("flat") is { } cause ? cause : window.Channel.Time.FlatLimits.IsCoarse ? "a step of the file is larger than the noise: equal samples are usual" : null;
        LimitJudgement judged = window.Judge(ReasonCode.Flatline);
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.Flatline, coarse)
            : new RuleOutcome(
                ReasonCode.Flatline,
                judged.Grade,
                judged.Evidence,
                $"flat for {Say.Number(window.ValueOf("flat") ?? 0)} % of the time, longest {Say.Milliseconds(window.ValueOf("flat_run") ?? 0)}",
                "a lead is off or its input shorted, the gain is zero, or a cable is broken",
                coarse,
                Stretch: window.StretchOf(window.Channel.Flat));
    }
}
