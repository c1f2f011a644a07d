using ChannelAudit.Impedance;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>The two electrodes of a site in their place, with the reading between them on the line.</summary>
internal sealed class SitePair
{
    private const float Dot = 22;
    private const float HalfWithReading = 50;
    private const float HalfWithout = 30;

    private readonly (float X, float Y) _along;
    private readonly string _kohm;

    /// <summary>Makes the pair of a site around a point.</summary>
    /// <param name="site">The site.</param>
    /// <param name="centre">Its middle.</param>
    /// <param name="along">The direction from the first electrode to the second, of length 1.</param>
    public SitePair(PilotSite site, (float X, float Y) centre, (float X, float Y) along)
    {
        Site = site;
        Centre = centre;
        _along = along;
        _kohm = site.Readings is { } read && read[ImpedancePair.AToB].Kohm is { } kohm ? ImpedanceWords.Kohm(kohm) : string.Empty;
    }

    public PilotSite Site { get; }

    public (float X, float Y) Centre { get; }

    /// <summary>The rooms that it takes: both electrodes, and the reading when there is one.</summary>
    public Area[] Rooms => _kohm.Length == 0 ? [RoomOf(-1), RoomOf(1)] : [RoomOf(-1), RoomOf(1), Plate];

    private float Half => _kohm.Length == 0 ? HalfWithout : HalfWithReading;

    private Area Plate => Area.Around(Centre.X, Centre.Y, TextMeasure.Width(_kohm, PilotLook.Kohm) + 8, TextMeasure.LineHeight(PilotLook.Kohm));

    /// <summary>The same pair elsewhere.</summary>
    public SitePair MovedBy(float down) => new(Site, (Centre.X, Centre.Y + down), _along);

    /// <summary>The same pair, moved to where all of it is inside a box.</summary>
    public SitePair MovedInto(Area box)
    {
        float left = box.Left - Rooms.Min(room => room.Left);
        float right = box.Right - Rooms.Max(room => room.Right);
        float top = box.Top - Rooms.Min(room => room.Top);
        float bottom = box.Bottom - Rooms.Max(room => room.Bottom);
        return new SitePair(Site, (Centre.X + Math.Max(0, left) + Math.Min(0, right), Centre.Y + Math.Max(0, top) + Math.Min(0, bottom)), _along);
    }

    /// <summary>The electrode that lies further to a side.</summary>
    public (float X, float Y) Outer(bool right) => At(_along.X >= 0 == right ? 1 : -1);

    public bool Overlaps(SitePair other) => Rooms.Any(own => other.Rooms.Any(own.Overlaps));

    /// <summary>How far it reaches from its middle in a direction, at most so far.</summary>
    public float Reach((float X, float Y) direction, float most)
    {
        const float step = 2;
        float reach = 0;
        for (float at = 0; at <= most; at += step)
        {
            Area point = Area.Around(Centre.X + (at * direction.X), Centre.Y + (at * direction.Y), step, step);
            reach = Rooms.Any(point.Overlaps) ? at : reach;
        }

        return reach;
    }

    /// <summary>Whether no part of it is above or below a box.</summary>
    public bool IsWithin(Area box) => Array.TrueForAll(Rooms, room => room.Top >= box.Top && room.Bottom <= box.Bottom);

    /// <summary>Draws it.</summary>
    public void Draw(Picture picture)
    {
        (float X, float Y) first = At(-1);
        (float X, float Y) second = At(1);
        picture.Line(first.X, first.Y, second.X, second.Y, Inks.Paper, 10);
        picture.Line(first.X, first.Y, second.X, second.Y, Inks.Ink, 5);
        picture.Disc(RoomOf(-1), Inks.Paper, Inks.Ink, 5);
        picture.Disc(RoomOf(1), Inks.Paper, Inks.Ink, 4);
        if (_kohm.Length > 0)
        {
            picture.Fill(Plate, Inks.Paper);
            picture.TextAround(_kohm, PilotLook.Kohm, Centre.X, Centre.Y);
        }
    }

    private Area RoomOf(int end) => Area.Around(At(end).X, At(end).Y, Dot, Dot);

    private (float X, float Y) At(int end) => (Centre.X + (end * Half * _along.X), Centre.Y + (end * Half * _along.Y));
}
