using ChannelAudit.Verdicts;

namespace ChannelAudit.Decisions;

/// <summary>The word of a verdict as files have it.</summary>
public static class GradeCode
{
    /// <summary><c>pass</c>, <c>questionable</c> or <c>reject</c>.</summary>
    public static string Of(Grade verdict) => verdict switch
    {
        Grade.Pass => "pass",
        Grade.Questionable => "questionable",
        _ => "reject",
    };

    /// <summary>The verdict of a word, or null when the word is none.</summary>
    public static Grade? From(string word) => word switch
    {
        "pass" => Grade.Pass,
        "questionable" => Grade.Questionable,
        "reject" => Grade.Reject,
        _ => null,
    };
}
