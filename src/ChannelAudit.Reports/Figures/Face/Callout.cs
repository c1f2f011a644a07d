using ChannelAudit.Impedance;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>Verdict shape and name of a site, beside the face and tied to its pair by a thin line.</summary>
/// <param name="pair">The pair.</param>
/// <param name="isRight">Whether it stands on the right of the face.</param>
internal sealed class Callout(SitePair pair, bool isRight)
{
    public const float Height = 58;
    private const float Shape = 44;
    private const float Between = 10;

    public SitePair Pair { get; } = pair;

    /// <summary>The room that the callout of a site asks for; a name that is longer is cut.</summary>
    public static float WidthOf(PilotSite site)
    {
        const float mostName = 170;
        float name = TextMeasure.Width(PlainText.Of(site.Name), PilotLook.Name);
        return Shape + Between + Math.Min(mostName, Math.Max(name, TextMeasure.Width(Reading(site), PilotLook.Words)));
    }

    /// <summary>Draws it, and returns the room that it takes.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="edge">Where the face ends on this side.</param>
    /// <param name="width">The room for shape and name.</param>
    /// <param name="centreY">Its middle.</param>
    public Area Draw(Picture picture, float edge, float width, float centreY)
    {
        Area shape = Area.Around(isRight ? edge + (Shape / 2) : edge - (Shape / 2), centreY, Shape, Shape);
        (float x, float y) = Pair.Outer(isRight);
        picture.Line(isRight ? shape.Left : shape.Right, centreY, x, y, Inks.OpenLine, 1.5f);
        SiteLook.Draw(picture, shape, Pair.Site);
        string reading = Reading(Pair.Site);
        float top = centreY - ((TextMeasure.LineHeight(PilotLook.Name) + (reading.Length > 0 ? TextMeasure.LineHeight(PilotLook.Note) : 0)) / 2);
        float room = width - Shape - Between;
        Area name = Text(picture, PlainText.Of(Pair.Site.Name), PilotLook.Name, shape, room, top);
        if (reading.Length > 0)
        {
            Text(picture, reading, PilotLook.Words, shape, room, name.Bottom);
        }

        return isRight
            ? Area.Between(shape.Left, centreY - (Height / 2), shape.Left + width, centreY + (Height / 2))
            : Area.Between(shape.Right - width, centreY - (Height / 2), shape.Right, centreY + (Height / 2));
    }

    // Good readings say nothing more than their number.
    private static string Reading(PilotSite site) =>
        site.Readings?.Grade is { } grade and > ImpedanceGrade.Good ? $"contact: {ImpedanceCodes.Of(grade)}" : string.Empty;

    private Area Text(Picture picture, string text, TextStyle style, Area shape, float room, float top)
    {
        string fitted = TextMeasure.Fit(text, style, room);
        return picture.Text(fitted, style, isRight ? shape.Right + Between : shape.Left - Between - TextMeasure.Width(fitted, style), top);
    }
}
