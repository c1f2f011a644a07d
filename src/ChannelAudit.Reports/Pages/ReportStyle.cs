namespace ChannelAudit.Reports.Pages;

/// <summary>The look of the report: one style sheet inside the page, for screen and paper.</summary>
/// <remarks>All text has a contrast of 4.5 and more against its ground (a test computes it from these colours). Verdicts differ by word,
/// shape and the stroke of the line beside them, not only by colour.</remarks>
internal static class ReportStyle
{
    /// <summary>Colour of ordinary text.</summary>
    public const string Ink = "#1d2530";

    /// <summary>Colour of less important text.</summary>
    public const string Faint = "#4d5866";

    /// <summary>Colour of links.</summary>
    public const string Link = "#1f4e8c";

    /// <summary>Colour of the page.</summary>
    public const string Paper = "#ffffff";

    /// <summary>Colour behind heads and boxes.</summary>
    public const string Shade = "#f1f3ee";

    /// <summary>Colour of pass.</summary>
    public const string Pass = "#2c5f8a";

    /// <summary>Colour of questionable.</summary>
    public const string Questionable = "#8a5a08";

    /// <summary>Colour of reject.</summary>
    public const string Reject = "#3d1146";

    /// <summary>The style sheet.</summary>
    public const string Css = $$"""
        :root { color-scheme: light; }
        * { box-sizing: border-box; }
        body { margin: 0 auto; padding: 2rem 1.25rem 4rem; max-width: 70rem; background: {{Paper}}; color: {{Ink}};
          font: 1rem/1.5 "Source Serif 4", Charter, Georgia, "DejaVu Serif", serif; }
        h1, h2, h3, table, dl, ul, .verdict, .note { font-family: "Segoe UI", "Noto Sans", "DejaVu Sans", sans-serif; }
        h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .5rem; }
        h2 { font-size: 1.3rem; margin: 2.5rem 0 .25rem; padding-top: .75rem; border-top: 3px solid {{Ink}}; }
        h3 { font-size: 1.05rem; margin: 1.5rem 0 .25rem; }
        .lead { font-size: 1.15rem; margin: 0 0 1rem; }
        .facts, .note, caption { color: {{Faint}}; font-size: .9rem; }
        a { color: {{Link}}; }
        a:focus-visible, summary:focus-visible { outline: 3px solid {{Link}}; outline-offset: 2px; }
        .skip { position: absolute; left: -100rem; } .skip:focus { left: 1.25rem; top: .5rem; background: {{Paper}}; padding: .25rem .5rem; }
        main:focus { outline: none; }
        summary { cursor: pointer; padding: .25rem 0; }
        table { width: 100%; border-collapse: collapse; font-size: .9rem; margin: .5rem 0 1rem; }
        caption { text-align: left; padding: .25rem 0; }
        th, td { text-align: left; vertical-align: top; padding: .4rem .6rem; border-bottom: 1px solid #c9cec4; overflow-wrap: anywhere; }
        thead th { background: {{Shade}}; border-bottom: 2px solid {{Ink}}; overflow-wrap: normal; }
        td.number, .conditions thead th:nth-child(n+3):nth-child(-n+7) { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
        .verdict { font-weight: 700; white-space: nowrap; }
        .readings { white-space: nowrap; }
        .pass { color: {{Pass}}; } .questionable { color: {{Questionable}}; } .reject { color: {{Reject}}; }
        td.mark { border-left: 6px solid {{Pass}}; }
        td.mark.questionable { border-left: 6px dashed {{Questionable}}; }
        td.mark.reject { border-left: 6px double {{Reject}}; }
        ul { margin: 0; padding-left: 1.1rem; } td ul { list-style: none; padding: 0; }
        dt { font-weight: 700; } dd { margin: 0 0 .5rem 1.1rem; }
        img { width: 100%; height: auto; border: 1px solid #c9cec4; margin: .75rem 0; }
        .caution { border: 2px solid {{Ink}}; background: {{Shade}}; padding: .75rem 1rem; }
        code { font: .85rem "Cascadia Mono", "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; }
        pre { background: {{Shade}}; padding: .75rem 1rem; white-space: pre-wrap; }
        @media print {
          body { max-width: none; padding: 0; font-size: 10pt; }
          h2, h3 { break-after: avoid; } tr, img, .caution { break-inside: avoid; } thead { display: table-header-group; }
          a { color: inherit; text-decoration: none; } .skip { display: none; }
        }
        """;
}
