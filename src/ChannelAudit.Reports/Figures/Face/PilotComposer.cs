using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>Lays out the pilot's picture: the face on the left, answer and sites on the right, what to do next below.</summary>
internal static class PilotComposer
{
    private const int MostSites = 8;

    /// <summary>Lays it out.</summary>
    public static Picture Compose(PilotReport report)
    {
        const float width = PilotLook.Width - (2 * PilotLook.Margin);
        NextList next = new(report, width);
        ImmutableArray<PilotSite> sites = Shown(report.Sites);
        float upper = Math.Max(PilotLook.LeastUpper, PilotLook.LeastHeight - next.Height - (2.5f * PilotLook.Margin));
        Picture picture = new(PilotLook.Width, (int)MathF.Ceiling(upper + next.Height + (2.5f * PilotLook.Margin)));
        Area top = new(PilotLook.Margin, PilotLook.Margin * 0.75f, width, upper);
        FacePanel.Draw(picture, report, sites, top with { Width = PilotLook.FaceWidth });
        Area right = Area.Between(PilotLook.Margin + PilotLook.FaceWidth + PilotLook.Margin, top.Top, top.Right, top.Bottom);
        float below = DrawAnswer(picture, report, right);
        Area rows = Area.Between(right.Left, below + PilotLook.Gap, right.Right, right.Bottom);
        SiteTable.Draw(picture, report.Recording, sites, report.Sites.Length - sites.Length, rows);
        float line = top.Bottom + (PilotLook.Margin * 0.5f);
        picture.Line(PilotLook.Margin, line, PilotLook.Width - PilotLook.Margin, line, Inks.Sketch, 2);
        next.Draw(picture, PilotLook.Margin, line + (PilotLook.Margin * 0.4f));
        return picture;
    }

    // Too many to be read: the worst, in file order.
    private static ImmutableArray<PilotSite> Shown(ImmutableArray<PilotSite> sites) => sites.Length <= MostSites
        ? sites
        :
        [
            .. sites.Select((site, i) => (Site: site, Place: i))
                .OrderByDescending(one => SiteLook.Of(one.Site))
                .Take(MostSites)
                .OrderBy(one => one.Place)
                .Select(one => one.Site),
        ];

    private static float DrawAnswer(Picture picture, PilotReport report, Area area)
    {
        float line = TextMeasure.LineHeight(PilotLook.Answer);
        float shape = PilotLook.Answer.Size;
        Grade? grade = AnswerWords.Look(report.Answer);
        VerdictShape.Draw(
            picture,
            Area.Around(area.Left + (shape / 2), area.Top + (line / 2), shape, shape),
            grade is { } known ? SiteLook.Of(known) : VerdictLook.NotAssessed,
            hasOpenQuestions: !report.NotChecked.IsEmpty);
        float left = area.Left + shape + (2 * PilotLook.Gap);

        // "IN DOUBT: you decide": what is called out, then the rest.
        string[] parts = AnswerWords.Headline(report).Split([':', ','], 2, StringSplitOptions.TrimEntries);
        float bottom = picture.Text(TextMeasure.Fit(parts[0], PilotLook.Answer, area.Right - left), PilotLook.Answer, left, area.Top).Bottom;
        string id = PlainText.Of(report.Recording.Id);
        string more = parts.Length > 1 ? parts[1] : string.Empty;
        if (more.Length > 0)
        {
            bottom = picture.Text(TextMeasure.Fit(more, PilotLook.AnswerMore, area.Right - left), PilotLook.AnswerMore, left, bottom).Bottom;
        }

        return picture.Text(TextMeasure.Fit(id, PilotLook.Note, area.Right - left), PilotLook.Note, left, bottom).Bottom;
    }
}
