using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>What to do about the reasons that occur, with the cautions that belong to it.</summary>
internal static class AdviceSection
{
    /// <summary>Where it is on the page.</summary>
    public const string Anchor = "advice";

    /// <summary>What a link to it says.</summary>
    public const string ShortTitle = "Before the next recording";

    /// <summary>Whether there is anything to advise.</summary>
    /// <param name="codes">Every code that occurs, of reasons and of information.</param>
    public static bool IsNeeded(IReadOnlySet<string> codes) => ReasonWords.All.Any(word => codes.Contains(word.Code));

    /// <summary>Writes the section; nothing when no reason occurs.</summary>
    /// <param name="html">The page.</param>
    /// <param name="codes">Every code that occurs, of reasons and of information.</param>
    public static void Write(HtmlText html, IReadOnlySet<string> codes)
    {
        ReasonWord[] words = [.. ReasonWords.All.Where(word => codes.Contains(word.Code))];
        if (words.Length == 0)
        {
            return;
        }

        html.Line("<section>").ElementLine($"h2 id=\"{Anchor}\"", $"{ShortTitle}, and when scoring this one").Line("<dl>");
        foreach (ReasonWord word in words)
        {
            html.Element("dt", char.ToUpperInvariant(word.Name[0]) + word.Name[1..]).ElementLine("dd", word.WhatToDo);
            if (ScoringAdvice.For(word.Code) is { } scoring)
            {
                html.ElementLine("dd", "When scoring: " + scoring);
            }
        }

        html.Line("</dl>");
        if (words.Any(word => word.TouchesSkin))
        {
            html.ElementLine("p class=\"caution\"", ReasonWords.Caution);
        }

        html.Line("</section>");
    }
}
