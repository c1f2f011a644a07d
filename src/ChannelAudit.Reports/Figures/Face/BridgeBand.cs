using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>A bridge: a band with rungs from pair to pair, closed and dark where it is certain, broken and light where it is suspected.</summary>
internal static class BridgeBand
{
    private const float Width = 30;
    private const float CertainRungs = 12;
    private const float SuspectedRungs = 24;
    private const float MostHidden = 0.4f;

    /// <summary>Draws the band from the edge of one pair to that of the other.</summary>
    public static void Draw(Picture picture, PilotJoint joint, SitePair one, SitePair other)
    {
        (float X, float Y) whole = (other.Centre.X - one.Centre.X, other.Centre.Y - one.Centre.Y);
        float distance = MathF.Max(1, MathF.Sqrt((whole.X * whole.X) + (whole.Y * whole.Y)));
        (float X, float Y) along = (whole.X / distance, whole.Y / distance);
        float start = one.Reach(along, MostHidden * distance);
        float length = distance - start - other.Reach((-along.X, -along.Y), MostHidden * distance);
        (float X, float Y) from = (one.Centre.X + (start * along.X), one.Centre.Y + (start * along.Y));
        (float X, float Y) across = (-along.Y * Width / 2, along.X * Width / 2);
        Pixel Corner(float at, int side) => new(from.X + (at * along.X) + (side * across.X), from.Y + (at * along.Y) + (side * across.Y));
        Color line = Ink(joint);
        picture.Polygon(
            [Corner(0, 1), Corner(length, 1), Corner(length, -1), Corner(0, -1)],
            joint.IsCertain ? Inks.RejectTint : Inks.QuestionableFill,
            line,
            3,
            joint.IsCertain ? Dash.Solid : Dash.Dashed);
        float rungs = joint.IsCertain ? CertainRungs : SuspectedRungs;
        for (float at = rungs; at < length - (rungs / 2); at += rungs)
        {
            picture.Line(Corner(at, 1).X, Corner(at, 1).Y, Corner(at, -1).X, Corner(at, -1).Y, line, 3);
        }
    }

    /// <summary>The rooms that the band takes, from one end to the other.</summary>
    public static IEnumerable<Area> Rooms(SitePair one, SitePair other)
    {
        const int parts = 12;
        return Enumerable.Range(0, parts + 1).Select(i => Area.Around(
            one.Centre.X + ((other.Centre.X - one.Centre.X) * i / parts), one.Centre.Y + ((other.Centre.Y - one.Centre.Y) * i / parts), Width, Width));
    }

    /// <summary>Writes the word beside the middle of the band, where nothing else stands.</summary>
    public static void Label(Picture picture, PilotJoint joint, SitePair one, SitePair other, Area panel, IReadOnlyCollection<Area> others)
    {
        string word = joint.IsCertain ? "bridge" : "bridge?";
        TextStyle style = PilotLook.Name with { Color = Ink(joint) };
        float width = TextMeasure.Width(word, style) + 12;
        float height = TextMeasure.LineHeight(style);
        (float X, float Y) apart = (MathF.Abs(other.Centre.X - one.Centre.X), MathF.Abs(other.Centre.Y - one.Centre.Y));
        bool fitsOnBand = apart.X > apart.Y && apart.X > 2.5f * width;
        (float X, float Y) middle = ((one.Centre.X + other.Centre.X) / 2, (one.Centre.Y + other.Centre.Y) / 2);
        Area place = Places(middle, fitsOnBand, (width / 2) + (Width / 2) + 16, (height / 2) + (Width / 2) + 4)
            .Select(point => Area.Around(point.X, point.Y, width, height))
            .Where(area => area.Left >= panel.Left && area.Right <= panel.Right && area.Top >= panel.Top && area.Bottom <= panel.Bottom)
            .FirstOrDefault(area => !others.Any(area.Overlaps) && (IsAt(area, middle) || !Rooms(one, other).Any(area.Overlaps)));
        if (place.Width > 0)
        {
            if (IsAt(place, middle))
            {
                picture.Fill(place, Inks.Paper);
            }

            picture.TextAround(word, style, place.CentreX, place.CentreY);
        }
    }

    private static bool IsAt(Area area, (float X, float Y) point) => area.Left < point.X && area.Right > point.X && area.Top < point.Y && area.Bottom > point.Y;

    private static Color Ink(PilotJoint joint) => joint.IsCertain ? Inks.RejectLine : Inks.QuestionableLine;

    // On a long band that runs across; else beside it, towards the nose first, since names stand on the other side; then further off.
    private static IEnumerable<(float X, float Y)> Places((float X, float Y) middle, bool onBand, float aside, float above)
    {
        if (onBand)
        {
            yield return middle;
        }

        for (float times = 1; times < 5; times += 0.5f)
        {
            yield return (middle.X - (aside * times), middle.Y);
            yield return (middle.X + (aside * times), middle.Y);
            yield return (middle.X, middle.Y - (above * times));
            yield return (middle.X, middle.Y + (above * times));
            yield return (middle.X - (aside * times), middle.Y - (above * times));
            yield return (middle.X - (aside * times), middle.Y + (above * times));
        }
    }
}
