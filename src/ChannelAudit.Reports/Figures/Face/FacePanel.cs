using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>The left half of the picture: the face with the sites where they are, and bridges between them.</summary>
internal static class FacePanel
{
    private const float GroundY = 0.215f;
    private const float Dot = 18;

    /// <summary>Draws it.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="report">The pilot.</param>
    /// <param name="sites">The sites to show.</param>
    /// <param name="area">The room.</param>
    public static void Draw(Picture picture, PilotReport report, ImmutableArray<PilotSite> sites, Area area)
    {
        float caption = TextMeasure.LineHeight(PilotLook.Note);
        int unplaced = sites.Count(site => FacePlace.Of(site) is null);
        (Area face, PairLayout layout) = Place(sites, area, unplaced, caption);
        if (layout.Elsewhere.Length != unplaced)
        {
            // Someone's place was taken: the rows below grow, and the face is laid out anew above them.
            (face, layout) = Place(sites, area, layout.Elsewhere.Length, caption);
        }

        FaceSketch.Draw(picture, face);
        string words = TextMeasure.Fit(Caption(sites), PilotLook.Note, area.Width);
        float half = TextMeasure.Width(words, PilotLook.Note) / 2;
        picture.TextAround(words, PilotLook.Note, Math.Clamp(face.CentreX, area.Left + half, area.Right - half), face.Bottom + 6 + (caption / 2));
        ImmutableArray<SitePair> pairs = layout.Pairs;
        if (!layout.Elsewhere.IsEmpty)
        {
            pairs = pairs.AddRange(UnplacedRow.Draw(picture, layout.Elsewhere, Area.Between(area.Left, face.Bottom + 6 + caption, area.Right, area.Bottom)));
        }

        DrawSites(picture, report, layout, pairs, face, area);
    }

    private static (Area Face, PairLayout Layout) Place(ImmutableArray<PilotSite> sites, Area area, int unplaced, float caption)
    {
        float height = area.Height - UnplacedRow.HeightOf(unplaced) - caption - 6;

        // Names stand beside the head: the side with the longer ones gets more room.
        float left = RoomFor(sites, isRight: false);
        float right = RoomFor(sites, isRight: true);
        float width = Math.Min(height * FaceSketch.Shape, (area.Width - left - right) / (2 * FaceSketch.HalfWidth));
        float free = area.Width - left - right - (2 * FaceSketch.HalfWidth * width);
        float centre = area.Left + left + (free / 2) + (FaceSketch.HalfWidth * width);
        Area face = Area.Around(centre, area.Top + (height / 2), width, Math.Min(height, width / FaceSketch.Shape));
        return (face, PairLayout.Of(sites, face, Ground(face)));
    }

    private static float RoomFor(ImmutableArray<PilotSite> sites, bool isRight) => sites
        .Where(site => FacePlace.Of(site) is { } place && place.X >= 0.5f == isRight)
        .Select(Callout.WidthOf)
        .DefaultIfEmpty(0)
        .Max();

    private static void DrawSites(Picture picture, PilotReport report, PairLayout layout, ImmutableArray<SitePair> pairs, Area face, Area area)
    {
        (PilotJoint Joint, SitePair One, SitePair Other)[] bridges = [.. Bridges(report, pairs)];
        foreach ((PilotJoint joint, SitePair one, SitePair other) in bridges)
        {
            BridgeBand.Draw(picture, joint, one, other);
        }

        Area ground = Ground(face);
        picture.Disc(Area.Around(ground.CentreX, ground.Top + (Dot / 2), Dot, Dot), Inks.Sketch, Inks.Ink, 3);
        picture.TextAround("ground", PilotLook.Note, ground.CentreX, ground.Bottom - (TextMeasure.LineHeight(PilotLook.Note) / 2));
        Area column = Area.Between(area.Left, face.Top, area.Right, face.Bottom);
        bool IsRight(SitePair pair) => pair.Centre.X >= face.CentreX;
        float head = FaceSketch.HalfWidth * face.Width;
        Area[] taken =
        [
            ground,
            .. pairs.SelectMany(pair => pair.Rooms),
            .. CalloutColumn.Draw(picture, layout.Pairs.Where(IsRight), isRight: true, face.CentreX + head, column),
            .. CalloutColumn.Draw(picture, layout.Pairs.Where(pair => !IsRight(pair)), isRight: false, face.CentreX - head, column),
        ];
        foreach (SitePair pair in pairs)
        {
            pair.Draw(picture);
        }

        foreach ((PilotJoint joint, SitePair one, SitePair other) in bridges)
        {
            IEnumerable<Area> bands = bridges.Where(bridge => bridge.Joint != joint).SelectMany(bridge => BridgeBand.Rooms(bridge.One, bridge.Other));
            BridgeBand.Label(picture, joint, one, other, area, [.. taken, .. bands, .. picture.Labels.Select(label => label.Area)]);
        }
    }

    private static IEnumerable<(PilotJoint Joint, SitePair One, SitePair Other)> Bridges(PilotReport report, ImmutableArray<SitePair> pairs)
    {
        foreach (PilotJoint joint in report.Joints.Where(joint => !joint.IsSettledApart).OrderBy(joint => joint.IsCertain))
        {
            SitePair? one = pairs.FirstOrDefault(pair => string.Equals(pair.Site.Name, joint.One, StringComparison.Ordinal));
            SitePair? other = pairs.FirstOrDefault(pair => string.Equals(pair.Site.Name, joint.Other, StringComparison.Ordinal));
            if (one is not null && other is not null)
            {
                yield return (joint, one, other);
            }
        }
    }

    private static Area Ground(Area face)
    {
        float width = TextMeasure.Width("ground", PilotLook.Note);
        float top = face.Top + (GroundY * face.Height) - (Dot / 2);
        return new Area(face.CentreX - (width / 2), top, width, Dot + 2 + TextMeasure.LineHeight(PilotLook.Note));
    }

    private static string Caption(ImmutableArray<PilotSite> sites)
    {
        return sites.Any(site => FacePlace.Of(site) is not null && FacePlace.IsSideUnknown(site))
            ? "as seen from the front: left is on the right; side not stated: drawn left"
            : "as seen from the front: the participant's left is on the right";
    }
}
