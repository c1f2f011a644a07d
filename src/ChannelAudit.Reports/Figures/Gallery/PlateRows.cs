using System.Collections.Immutable;
using ChannelAudit.Synthesis.Gallery;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>Which rows a view has.</summary>
internal static class PlateRows
{
    /// <summary>The rows for the columns of a plate, from the top.</summary>
    public static ImmutableArray<IPlateRow> Of(GalleryView view, ImmutableArray<PlateColumn> columns) => view switch
    {
        GalleryView.Spectrum => [new ExcerptRow(columns, 0, 1), new SpectrumRow(columns, 1.3f)],
        GalleryView.Closeup => [new ExcerptRow(columns, 0, 1), new ExcerptRow(columns, 1, 1.15f)],
        GalleryView.Baseline => [new WholeRow(columns, 1), new BaselineRow(columns, 1)],
        GalleryView.Pair => [new ExcerptRow(columns, 0, 1), new ExcerptRow(columns, 1, 1), new StatesRow(0.95f)],
        _ => throw new ArgumentOutOfRangeException(nameof(view), view, "a view without rows"),
    };
}
