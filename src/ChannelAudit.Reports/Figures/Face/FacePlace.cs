using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Setup;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>Where a pair lies on the sketch.</summary>
/// <param name="X">From the left of the sketch's box, 0, to its right, 1. The participant's left is on the right.</param>
/// <param name="Y">From the top, 0, to the bottom, 1.</param>
/// <param name="AlongX">The direction from the first electrode to the second, of length 1: to the right.</param>
/// <param name="AlongY">Downwards.</param>
internal readonly record struct FacePlace(float X, float Y, float AlongX, float AlongY)
{
    // On the participant's left. Where pairs are commonly placed; a sketch, no guide for placing them. The first word that occurs decides, so that
    // "eyebrow" is a brow and "forehead" no head.
    private static readonly ImmutableArray<(FacePlace Place, string[] Words)> Known =
    [
        (new(0.635f, 0.315f, 1, 0), ["forehead", "frontal"]),
        (new(0.63f, 0.392f, 0.98f, -0.2f), ["brow", "corrugator", "supercili"]),
        (new(0.665f, 0.535f, 0.99f, -0.14f), ["eye", "lid", "ocul"]),
        (new(0.70f, 0.665f, 0.77f, -0.64f), ["cheek", "zygomat"]),
        (new(0.745f, 0.755f, -0.5f, 0.87f), ["jaw", "masseter"]),
        (new(0.575f, 0.865f, 1, 0), ["chin", "mental"]),
        (new(0.60f, 0.955f, 1, 0), ["neck", "platysma"]),
        (new(0.80f, 0.43f, 0.2f, 0.98f), ["temple", "temporal"]),
        (new(0.56f, 0.62f, 0.2f, 0.98f), ["nose", "nasal"]),
        (new(0.575f, 0.785f, 1, 0), ["lip", "mouth", "oris", "labii", "risorius"]),
    ];

    /// <summary>The place of a site: the position of its setup, else the place that its name or else its muscle speaks of; null when neither does.</summary>
    public static FacePlace? Of(PilotSite site)
    {
        if (site.Setup is { Position: [var x, var y] })
        {
            // A setup counts from ear to ear, since that is what a person sees as the sketch.
            return new FacePlace(0.5f + (2 * FaceSketch.HalfWidth * ((float)x - 0.5f)), (float)y, 1, 0);
        }

        FacePlace? place = Find(site.Name) ?? Find(site.Setup?.Muscle);
        return place is { } left && IsRight(site) ? new FacePlace(1 - left.X, left.Y, -left.AlongX, left.AlongY) : place;
    }

    /// <summary>Whether the side on which a site is drawn is said nowhere.</summary>
    public static bool IsSideUnknown(PilotSite site) => site.Setup is not { Position.Length: 2 } && SideOf(site) is null;

    private static FacePlace? Find(string? words)
    {
        foreach ((FacePlace place, string[] known) in Known)
        {
            if (words is not null && known.Any(word => words.Contains(word, StringComparison.OrdinalIgnoreCase)))
            {
                return place;
            }
        }

        return null;
    }

    private static bool IsRight(PilotSite site) => string.Equals(SideOf(site), "right", StringComparison.Ordinal);

    private static string? SideOf(PilotSite site) => site.Setup?.Side
        ?? (site.Name.Contains("right", StringComparison.OrdinalIgnoreCase) ? "right"
            : site.Name.Contains("left", StringComparison.OrdinalIgnoreCase) ? "left" : null);
}
