using ScottPlot;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The colours of a cell's picture on a light or a dark page. Lightness and shape say what hue says.</summary>
internal sealed record CellInks
{
    /// <summary>For light pages.</summary>
    public static CellInks Light { get; } = new()
    {
        Paper = Color.FromHex("#FFFFFF"),
        Field = Color.FromHex("#F4F5F2"),
        Window = Color.FromHex("#FFFFFF"),
        Grid = Color.FromHex("#DCE0DA"),
        Ink = Color.FromHex("#1D2530"),
        Quiet = Color.FromHex("#4D5866"),
        Edge = Color.FromHex("#1F4E8C"),
        Gap = Color.FromHex("#6B7686"),
        Questionable = Color.FromHex("#8A5A08"),
        QuestionableTint = Color.FromHex("#F5E9C8"),
        Reject = Color.FromHex("#3D1146"),
        RejectTint = Color.FromHex("#E9DCEC"),
    };

    /// <summary>For dark pages.</summary>
    public static CellInks Dark { get; } = new()
    {
        Paper = Color.FromHex("#15191E"),
        Field = Color.FromHex("#1B2026"),
        Window = Color.FromHex("#262D35"),
        Grid = Color.FromHex("#39424C"),
        Ink = Color.FromHex("#E4E7EA"),
        Quiet = Color.FromHex("#AEB7C1"),
        Edge = Color.FromHex("#93BDF2"),
        Gap = Color.FromHex("#8C97A4"),
        Questionable = Color.FromHex("#E3B659"),
        QuestionableTint = Color.FromHex("#433A1C"),
        Reject = Color.FromHex("#E9AEF6"),
        RejectTint = Color.FromHex("#46284D"),
    };

    /// <summary>The ground of the picture.</summary>
    public required Color Paper { get; init; }

    /// <summary>The ground of a field.</summary>
    public required Color Field { get; init; }

    /// <summary>The ground of the scoring window, and of the band of the muscle.</summary>
    public required Color Window { get; init; }

    /// <summary>Fine lines.</summary>
    public required Color Grid { get; init; }

    /// <summary>Traces and headings.</summary>
    public required Color Ink { get; init; }

    /// <summary>Numbers and notes.</summary>
    public required Color Quiet { get; init; }

    /// <summary>Edges of the window, harmonics of the mains.</summary>
    public required Color Edge { get; init; }

    /// <summary>Time of which nothing is stored.</summary>
    public required Color Gap { get; init; }

    /// <summary>Letters and bars of questionable findings.</summary>
    public required Color Questionable { get; init; }

    /// <summary>Behind questionable findings.</summary>
    public required Color QuestionableTint { get; init; }

    /// <summary>Letters and bars of rejecting findings.</summary>
    public required Color Reject { get; init; }

    /// <summary>Behind rejecting findings.</summary>
    public required Color RejectTint { get; init; }
}
