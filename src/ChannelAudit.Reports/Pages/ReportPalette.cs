namespace ChannelAudit.Reports.Pages;

/// <summary>The colours of the report on a light or on a dark ground, as <c>#rrggbb</c>.</summary>
/// <remarks>All text has a contrast of 4.5 and more against each ground (a test computes it).</remarks>
internal sealed record ReportPalette
{
    /// <summary>For paper and light screens.</summary>
    public static ReportPalette Light { get; } = new()
    {
        Ink = "#1d2530",
        Faint = "#4d5866",
        Link = "#1f4e8c",
        Pass = "#2c5f8a",
        Questionable = "#8a5a08",
        Reject = "#3d1146",
        Paper = "#ffffff",
        Shade = "#f1f3ee",
        Glow = "#fbf1cf",
        Rule = "#c9cec4",
    };

    /// <summary>For dark screens.</summary>
    public static ReportPalette Dark { get; } = new()
    {
        Ink = "#e4e7ea",
        Faint = "#aeb7c1",
        Link = "#93bdf2",
        Pass = "#86b9e3",
        Questionable = "#e3b659",
        Reject = "#e9aef6",
        Paper = "#15191e",
        Shade = "#20262d",
        Glow = "#3a3418",
        Rule = "#414a54",
    };

    /// <summary>Ordinary text.</summary>
    public required string Ink { get; init; }

    /// <summary>Less important text.</summary>
    public required string Faint { get; init; }

    /// <summary>Links.</summary>
    public required string Link { get; init; }

    /// <summary>The verdict pass.</summary>
    public required string Pass { get; init; }

    /// <summary>The verdict questionable.</summary>
    public required string Questionable { get; init; }

    /// <summary>The verdict reject.</summary>
    public required string Reject { get; init; }

    /// <summary>The page.</summary>
    public required string Paper { get; init; }

    /// <summary>Behind heads and boxes.</summary>
    public required string Shade { get; init; }

    /// <summary>Behind what a link has led to.</summary>
    public required string Glow { get; init; }

    /// <summary>Lines between rows; carries no meaning.</summary>
    public required string Rule { get; init; }

    /// <summary>As custom properties of a style sheet.</summary>
    public string Css =>
        $"--ink: {Ink}; --faint: {Faint}; --link: {Link}; --pass: {Pass}; --questionable: {Questionable}; --reject: {Reject}; "
        + $"--paper: {Paper}; --shade: {Shade}; --glow: {Glow}; --rule: {Rule};";
}
