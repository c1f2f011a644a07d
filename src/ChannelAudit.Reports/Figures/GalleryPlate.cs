using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Gallery;
using ChannelAudit.Synthesis.Gallery;

namespace ChannelAudit.Reports.Figures;

/// <summary>A plate of the gallery: a fault beside what resembles it, each with the verdict that the audit gave, in the view that tells them apart.</summary>
public static class GalleryPlate
{
    /// <summary>Draws the plate as a PNG; the same exhibits and size give the same bytes.</summary>
    /// <param name="subject">The subject.</param>
    /// <param name="exhibits">Its exhibits, the fault first.</param>
    /// <param name="size">Width and height.</param>
    public static byte[] Render(GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits, FigureSize size) =>
        Png.Of(Compose(subject, exhibits, size), isSmall: true);

    /// <summary>Lays out the plate without drawing it.</summary>
    internal static Picture Compose(GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits, FigureSize size) =>
        PlateComposer.Compose(subject, exhibits, size);
}
