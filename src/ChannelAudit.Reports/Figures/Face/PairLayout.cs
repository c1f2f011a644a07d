using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>Which pairs lie where on the face, and which sites have no place there.</summary>
/// <param name="Pairs">The pairs on the face.</param>
/// <param name="Elsewhere">Sites whose place is not known, or taken.</param>
internal sealed record PairLayout(ImmutableArray<SitePair> Pairs, ImmutableArray<PilotSite> Elsewhere)
{
    private static readonly float[] Shifts = [0, 36, -36, 72, -72, 108, -108];

    /// <summary>Lays out sites in a box of the face; where two would overlap, the later one moves up or down.</summary>
    /// <param name="sites">The sites.</param>
    /// <param name="box">The face's box.</param>
    /// <param name="ground">What the ground takes.</param>
    public static PairLayout Of(ImmutableArray<PilotSite> sites, Area box, Area ground)
    {
        List<SitePair> pairs = [];
        List<PilotSite> elsewhere = [];
        foreach (PilotSite site in sites)
        {
            SitePair? found = FacePlace.Of(site) is { } place ? FirstFree(site, place, box, ground, pairs) : null;
            if (found is null)
            {
                elsewhere.Add(site);
            }
            else
            {
                pairs.Add(found);
            }
        }

        return new PairLayout([.. pairs], [.. elsewhere]);
    }

    private static SitePair? FirstFree(PilotSite site, FacePlace place, Area box, Area ground, List<SitePair> pairs)
    {
        SitePair wanted = new(site, (box.Left + (box.Width * place.X), box.Top + (box.Height * place.Y)), (place.AlongX, place.AlongY));
        Area inside = Area.Around(box.CentreX, box.CentreY, 2 * FaceSketch.HalfWidth * box.Width, box.Height);
        return Shifts
            .Select(wanted.MovedInto(inside).MovedBy)
            .FirstOrDefault(pair => pair.IsWithin(box) && !pair.Rooms.Any(ground.Overlaps) && !pairs.Exists(pair.Overlaps));
    }
}
