using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>Sites without a place on the face: rows below it, so that nothing is shown where it may not be.</summary>
internal static class UnplacedRow
{
    private const int MostInRow = 4;
    private const float PairHeight = 34;
    private const float Shape = 36;
    private const float CellHeight = PairHeight + Shape + 16;

    /// <summary>The height that some sites need; none for none.</summary>
    public static float HeightOf(int sites) =>
        sites == 0 ? 0 : TextMeasure.LineHeight(PilotLook.Note) + (((sites + MostInRow - 1) / MostInRow) * CellHeight);

    /// <summary>Draws names and shapes, and returns the pairs, which are drawn later than bridges.</summary>
    public static ImmutableArray<SitePair> Draw(Picture picture, ImmutableArray<PilotSite> sites, Area box)
    {
        picture.Text("not on the sketch, place not known or taken:", PilotLook.Note, box.Left, box.Top);
        float top = box.Top + TextMeasure.LineHeight(PilotLook.Note);
        float width = box.Width / Math.Min(sites.Length, MostInRow);
        ImmutableArray<SitePair>.Builder pairs = ImmutableArray.CreateBuilder<SitePair>(sites.Length);
        for (int i = 0; i < sites.Length; i++)
        {
            float y = top + (i / MostInRow * CellHeight);
            float centre = box.Left + (((i % MostInRow) + 0.5f) * width);
            pairs.Add(new SitePair(sites[i], (centre, y + (PairHeight / 2)), (1, 0)));
            string name = TextMeasure.Fit(PlainText.Of(sites[i].Name), PilotLook.Name, width - Shape - 24);
            float line = Shape + 8 + TextMeasure.Width(name, PilotLook.Name);
            Area shape = new(centre - (line / 2), y + PairHeight + 4, Shape, Shape);
            SiteLook.Draw(picture, shape, sites[i]);
            picture.Text(name, PilotLook.Name, shape.Right + 8, shape.CentreY - (TextMeasure.LineHeight(PilotLook.Name) / 2));
        }

        return pairs.MoveToImmutable();
    }
}
