using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>The word and the shape of a verdict: never colour alone.</summary>
public static class VerdictWords
{
    /// <summary>The word in tables, pages and on the terminal: <c>pass</c>, <c>questionable</c> or <c>reject</c>.</summary>
    public static string Code(Grade verdict) => verdict switch
    {
        Grade.Pass => "pass",
        Grade.Questionable => "questionable",
        Grade.Reject => "reject",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "no such verdict"),
    };

    /// <summary>The verdict of a word, or null when the word is none.</summary>
    public static Grade? FromCode(string word) => word switch
    {
        "pass" => Grade.Pass,
        "questionable" => Grade.Questionable,
        "reject" => Grade.Reject,
        _ => null,
    };

    /// <summary>The shape of a pass with something not assessed: the broken disc of the pictures, and a question mark so that nobody takes it for whole.</summary>
    public const string OpenPass = "\u25CC?";

    /// <summary>What the shapes mean.</summary>
    public const string Legend = "\u25CB pass, \u25CC? pass with something not assessed, \u25B2 questionable, \u22A0 reject";

    /// <summary>A light disc for pass, a triangle for questionable, a square with a cross for reject, as in the pictures.</summary>
    public static string Shape(Grade verdict) => verdict switch
    {
        Grade.Pass => "\u25CB",
        Grade.Questionable => "\u25B2",
        _ => "\u22A0",
    };

    /// <summary>The shape for terminals that know only ASCII.</summary>
    public static string AsciiShape(Grade verdict) => verdict switch
    {
        Grade.Pass => "o",
        Grade.Questionable => "^",
        _ => "#",
    };
}
