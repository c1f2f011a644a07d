using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>Whether exclusions are even, on the page: what stands out in words, every comparison in a table, all shares folded away.</summary>
internal static class FairnessSection
{
    private const int MostShares = 400;
    private const string Explained =
        "Difference: largest less smallest share of all that is counted; the test compares the mean of the participants' own shares.";

    /// <summary>Writes the section.</summary>
    public static void Write(HtmlText html, FairnessReport report)
    {
        html.Line("<section id=\"even\">").ElementLine("h2", FairnessWords.Title).ElementLine("p", string.Join(' ', FairnessWords.Lead(report)));
        FairnessComparison[] standOut = [.. report.Comparisons.Where(one => one.Answer == FairnessAnswer.StandsOut)];
        if (standOut.Length > 0)
        {
            html.Line("<ul class=\"uneven\">");
            foreach (FairnessComparison one in standOut)
            {
                html.Markup("<li>").Label(FairnessWords.Of(one)).Line("</li>");
            }

            html.Line("</ul>");
        }

        WriteComparisons(html, report);
        WriteShares(html, report);
        html.ElementLine("p class=\"note\"", $"{FairnessWords.NoTrialTest} {Explained}").Line("</section>");
    }

    private static void WriteComparisons(HtmlText html, FairnessReport report)
    {
        html.Table(
            "fair", "Excluded: the final verdict is reject. Share with its 95 % interval (Wilson), which takes trials for independent and is too narrow for them",
            "What is compared", "Largest share", "Smallest share", "Difference", "p", "Answer", "What it rests on");
        foreach (FairnessComparison one in report.Comparisons)
        {
            html.Markup("<tr><th scope=\"row\">").Label(FairnessWords.Subject(one)).Markup("</th>");
            WriteShare(html, one.Highest);
            WriteShare(html, one.Lowest);
            html.Element("td class=\"number\"", one.Difference is { } difference ? FairnessWords.Points(difference) : "n/a")
                .Element("td class=\"number\"", one.P is { } p ? FairnessWords.Probability(p) : "n/a")
                .Element(one.Answer == FairnessAnswer.StandsOut ? "td class=\"verdict\"" : "td", FairnessWords.Answer(one))
                .Element("td", Basis(one)).Line("</tr>");
        }

        html.EndTable();
    }

    private static string Basis(FairnessComparison one) =>
        string.Join("; ", new[] { one.Test == FairnessTest.None ? null : FairnessWords.Test(one), one.Note }.OfType<string>());

    private static void WriteShare(HtmlText html, ExclusionShare? share)
    {
        if (share is null)
        {
            html.Element("td", "n/a");
            return;
        }

        html.Markup("<td>").Label(share.Level).Text($": {share.Excluded}").Markup("</td>");
    }

    private static void WriteShares(HtmlText html, FairnessReport report)
    {
        if (report.Shares.IsEmpty)
        {
            return;
        }

        html.Line("<details>").ElementLine("summary", $"Show all {report.Shares.Length.Plain()} shares").Table(
            "shares", "Excluded of all, with the share and its 95 % interval; fairness-shares.tsv has the same", "Counted", "Of", "Excluded", "Participants");
        foreach (ExclusionShare share in report.Shares.Take(MostShares))
        {
            string where = share.By == Compared.Channel ? string.Empty : $" at {share.Channel ?? "all channels"}";
            html.Markup("<tr><th scope=\"row\">").Label($"{FairnessWords.Things(share.Of)}{where}").Markup("</th><td>")
                .Text($"{FairnessWords.One(share.By)} ").Label(share.Level).Markup("</td>")
                .Element("td", share.Excluded.ToString()).Element("td class=\"number\"", share.Participants.Plain()).Line("</tr>");
        }

        html.EndTable();
        if (report.Shares.Length > MostShares)
        {
            html.ElementLine("p class=\"note\"", $"{(report.Shares.Length - MostShares).Plain()} more in fairness-shares.tsv.");
        }

        html.Line("</details>");
    }
}
