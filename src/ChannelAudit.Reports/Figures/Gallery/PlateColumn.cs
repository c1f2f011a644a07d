using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>One specimen on a plate.</summary>
internal sealed class PlateColumn
{
    private readonly RibbonScale _scale;

    public PlateColumn(GalleryExhibit exhibit, RibbonScale scale)
    {
        Exhibit = exhibit;
        _scale = scale;
        Subject = Of(exhibit.Channel);
    }

    /// <summary>The specimen and what was said of it.</summary>
    public GalleryExhibit Exhibit { get; }

    /// <summary>The channel of its site.</summary>
    public SheetSubject Subject { get; }

    /// <summary>The channels that are drawn: of the site, then of its partner when there is one.</summary>
    public IEnumerable<SheetSubject> Shown => Exhibit.Specimen.Partner is { } partner
        ? [Subject, Of(Exhibit.Recording.Channels.First(channel => string.Equals(channel.Name, partner, StringComparison.Ordinal)))]
        : [Subject];

    private SheetSubject Of(ChannelResult channel) => channel.View is { } view
        ? new SheetSubject(Exhibit.Recording, channel, view, _scale)
        : throw new ArgumentException("The channel has no view: the audit was not asked for one.", nameof(channel));
}
