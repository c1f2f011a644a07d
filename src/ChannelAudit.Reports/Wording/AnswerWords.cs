using ChannelAudit.Pilot;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>The answer to "can we start?".</summary>
public static class AnswerWords
{
    /// <summary>The word in tables: <c>start</c>, <c>doubtful</c>, <c>not-yet</c> or <c>cannot-say</c>.</summary>
    public static string Code(PilotAnswer answer) => answer switch
    {
        PilotAnswer.Start => "start",
        PilotAnswer.Doubtful => "doubtful",
        PilotAnswer.NotYet => "not-yet",
        _ => "cannot-say",
    };

    /// <summary>The answer of a word, or null.</summary>
    public static PilotAnswer? FromCode(string code) => Enum.GetValues<PilotAnswer>().Cast<PilotAnswer?>().FirstOrDefault(answer => string.Equals(Code(answer!.Value), code, StringComparison.Ordinal));

    /// <summary>The answer as it is called out; one that rests on less than everything says so.</summary>
    public static string Headline(PilotReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Answer switch
        {
            PilotAnswer.Start when !report.NotChecked.IsEmpty => "START, as far as could be checked",
            PilotAnswer.Start => "START",
            PilotAnswer.Doubtful => "IN DOUBT: you decide",
            PilotAnswer.NotYet => "NOT YET",
            _ => "CANNOT SAY: too little was recorded",
        };
    }

    /// <summary>The verdict whose shape stands beside the answer; null when there is none.</summary>
    public static Grade? Look(PilotAnswer answer) => answer switch
    {
        PilotAnswer.Start => Grade.Pass,
        PilotAnswer.Doubtful => Grade.Questionable,
        PilotAnswer.NotYet => Grade.Reject,
        _ => null,
    };
}
