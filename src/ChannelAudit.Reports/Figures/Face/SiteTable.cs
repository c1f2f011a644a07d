using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>The right half of the picture below the answer: a row a site.</summary>
internal static class SiteTable
{
    private const float HighestRow = 180;
    private const float LowestRow = 60;

    /// <summary>The height that some rows need at least.</summary>
    public static float LeastHeight(int rows) => TextMeasure.LineHeight(PilotLook.Note) + ((rows + 1) * LowestRow);

    /// <summary>Draws it.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="recording">For when a fault was there.</param>
    /// <param name="sites">The sites to show.</param>
    /// <param name="hidden">How many more there are.</param>
    /// <param name="area">The room.</param>
    public static void Draw(Picture picture, RecordingResult recording, ImmutableArray<PilotSite> sites, int hidden, Area area)
    {
        float head = TextMeasure.LineHeight(PilotLook.Note);
        picture.Text("site", PilotLook.Note, area.Left, area.Top);
        picture.Text("its task (grey)", PilotLook.Note, area.Left + TaskRow.TraceLeft, area.Top);
        picture.Text("over rest", PilotLook.Note, area.Right - TaskRow.AnswerFromRight, area.Top);
        float foot = hidden > 0 ? head : 0;
        float height = Math.Min(HighestRow, (area.Height - head - foot) / Math.Max(1, sites.Length));
        float top = area.Top + head + 4;
        for (int i = 0; i < sites.Length; i++)
        {
            Area row = new(area.Left, top + (i * height), area.Width, height - 4);
            TaskRow.Draw(picture, recording, sites[i], row);
            picture.Line(row.Left, row.Bottom + 2, row.Right, row.Bottom + 2, Inks.Grid, 1);
        }

        if (hidden > 0)
        {
            string more = $"and {Quantities.Many(hidden, "site")} more, none of them worse: see report.html";
            picture.Text(more, PilotLook.Note, area.Left, top + (sites.Length * height));
        }
    }
}
