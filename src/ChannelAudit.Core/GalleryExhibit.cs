using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Synthesis.Gallery;
using ChannelAudit.Views;

namespace ChannelAudit;

/// <summary>A specimen with what the audit said of it, ready to be drawn.</summary>
public sealed record GalleryExhibit
{
    /// <summary>What was made.</summary>
    public required GallerySpecimen Specimen { get; init; }

    /// <summary>What the audit found.</summary>
    public required RecordingResult Recording { get; init; }

    /// <summary>For each excerpt the trace of the site, then that of its partner when there is one.</summary>
    public required ImmutableArray<ImmutableArray<Trace>> Traces { get; init; }

    /// <summary>The channel of the site.</summary>
    public ChannelResult Channel => Recording.Channels.First(channel => string.Equals(channel.Name, Specimen.Site, StringComparison.Ordinal));

    /// <summary>The trial whose verdict is shown.</summary>
    public CellResult Cell => Channel.Cells.First(cell => cell.Trial == Specimen.Trial);
}
