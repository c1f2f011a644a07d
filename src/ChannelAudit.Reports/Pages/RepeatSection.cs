using ChannelAudit.Criteria;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Reports.Pages;

/// <summary>With what the audit was made, the limits in force, and how to make it again.</summary>
internal static class RepeatSection
{
    private const string None = "\u2013";

    /// <summary>Writes the section.</summary>
    public static void Write(HtmlText html, AuditRun run)
    {
        html.Line("<section>").ElementLine("h2 id=\"again\"", "How to make this again")
            .Markup("<p>ChannelAudit ").Text(run.Version).Line(". The same recordings, criteria, setup and version give the same bytes.</p>")
            .Markup("<p>Criteria: ").Text(run.Criteria.FileName ?? "the defaults").Markup(", SHA-256 ").Element("code", run.Criteria.Sha256)
            .Markup("<br>Limits: ").Text(FreezeWords.Of(run.Criteria))
            .Markup("<br>Setup: ").Text(run.Setup.FileName ?? "none");
        if (run.Setup.Sha256 is { } hash)
        {
            html.Markup(", SHA-256 ").Element("code", hash);
        }

        if (run.Impedance is { } impedance)
        {
            html.Markup("<br>Impedance readings: ").Text(impedance.FileName).Markup(", SHA-256 ").Element("code", impedance.Sha256);
        }

        html.Line("</p>");
        WriteFreeze(html, run.Criteria);
        html.Markup("<pre><code>").Text(Command(run)).Line("</code></pre>")
            .Line("<p class=\"note\">ROOT is the folder or recording that was given; <code>audit.json</code> lists the SHA-256 of every recording and of every file written.</p>");
        WriteLimits(html, run.Criteria);
        html.Line("</section>");
    }

    private static void WriteFreeze(HtmlText html, AuditCriteria criteria)
    {
        if (criteria.Frozen is not { IsUnchanged: false } changed)
        {
            return;
        }

        html.Line("<p>Other than on the day they were frozen:</p>").Line("<ul>");
        foreach (string difference in changed.Differences)
        {
            html.ElementLine("li", difference);
        }

        html.Line("</ul>");
    }

    private static string Command(AuditRun run)
    {
        string setup = run.Setup.FileName is { } setupFile ? $" --setup {Quoted(setupFile)}" : string.Empty;
        string criteria = run.Criteria.FileName is { } criteriaFile ? $" --criteria {Quoted(criteriaFile)}" : string.Empty;
        string impedance = run.Impedance is { } log ? $" --impedance {Quoted(log.FileName)}" : string.Empty;
        string events = run.Inputs.FirstOrDefault(input => input.Role is RunInput.Events) is { } table ? $" --events {Quoted(table.FileName)}" : string.Empty;
        return $"channelaudit screen ROOT{setup}{criteria}{impedance}{events} --out DIR";
    }

    private static string Quoted(string file) => file.All(character => char.IsAsciiLetterOrDigit(character) || character is '.' or '-' or '_' or '/')
        ? file
        : $"'{file.Replace("'", "'\\''", StringComparison.Ordinal)}'";

    private static void WriteLimits(HtmlText html, AuditCriteria criteria)
    {
        html.ElementLine("h3", "Limits in force")
            .Table("limits", "A limit counts as reached at its own value; \u201Cand\u201D: all are needed, \u201Cor\u201D: one is enough", "Reason", "Questionable", "Reject", "Source");
        foreach (Criterion criterion in criteria.All)
        {
            html.Markup("<tr><th scope=\"row\">").Text(ReasonWords.For(criterion.Reason).Name).Markup(" <code>").Text(criterion.Reason).Markup("</code></th>")
                .Element("td", LimitWords.Questionable(criterion, None))
                .Element("td", LimitWords.Reject(criterion, None))
                .Element("td", criterion.Source).Line("</tr>");
        }

        html.EndTable();
    }
}
