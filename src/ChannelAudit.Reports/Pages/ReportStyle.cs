namespace ChannelAudit.Reports.Pages;

/// <summary>The look of the report: one style sheet inside the page, for light and dark screens and for paper.</summary>
/// <remarks>Verdicts differ by word, shape and the stroke of the line beside them, not only by colour. What <c>more</c> holds stands in the head of
/// its table as well, and is shown again only in the row that a link has led to.</remarks>
internal static class ReportStyle
{
    /// <summary>The style sheet.</summary>
    public static string Css { get; } = $$"""
        :root { color-scheme: light dark; {{ReportPalette.Light.Css}} }
        @media screen and (prefers-color-scheme: dark) { :root { {{ReportPalette.Dark.Css}} } }
        * { box-sizing: border-box; }
        body { margin: 0 auto; padding: 2rem 1.25rem 4rem; max-width: 76rem; background: var(--paper); color: var(--ink);
          font: 1rem/1.5 "Segoe UI", "Noto Sans", "DejaVu Sans", sans-serif; }
        h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .5rem; }
        h2 { font-size: 1.3rem; margin: 2.5rem 0 .25rem; padding-top: .75rem; border-top: 3px solid var(--ink); }
        h3 { font-size: 1.1rem; margin: 1.75rem 0 .25rem; }
        h4 { font-size: 1.05rem; margin: 2rem 0 .25rem; padding-top: .5rem; border-top: 1px solid var(--rule); }
        h5 { font-size: 1rem; margin: 1.25rem 0 .25rem; }
        h1, h2, h3, h4, h5, caption { overflow-wrap: anywhere; } p, li { overflow-wrap: break-word; }
        .lead { font-size: 1.15rem; margin: 0 0 1rem; }
        .facts, .note, caption { color: var(--faint); font-size: .9rem; }
        a { color: var(--link); }
        a:focus-visible, summary:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
        .skip { position: absolute; left: -100rem; } .skip:focus { left: 1.25rem; top: .5rem; background: var(--paper); padding: .25rem .5rem; }
        main:focus { outline: none; }
        nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; }
        summary { cursor: pointer; padding: .25rem 0; }
        .wide { overflow-x: auto; padding-left: 3px; }
        table { width: 100%; border-collapse: collapse; font-size: .9rem; margin: .5rem 0 1rem; }
        caption { text-align: left; padding: .25rem 0; }
        th, td { text-align: left; vertical-align: top; padding: .4rem .6rem; border-bottom: 1px solid var(--rule); overflow-wrap: break-word; }
        bdi, .limits td:last-child { overflow-wrap: anywhere; } .odd td:nth-child(2) { min-width: 9rem; }
        thead th { background: var(--shade); border-bottom: 2px solid var(--ink); overflow-wrap: normal; }
        td.number { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
        .reasons thead th:nth-child(n+2):nth-child(-n+4), .conditions thead th:nth-child(n+3):nth-child(-n+7),
        .overview thead th:nth-last-child(-n+4):nth-last-child(n+2) { text-align: right; }
        .fair thead th:nth-child(n+4):nth-child(-n+5), .shares thead th:last-child, .moved thead th:nth-child(n+2) { text-align: right; }
        .evidence, .overview, .fair { min-width: 52rem; } .trends th:first-child { min-width: 8rem; }
        .evidence { table-layout: fixed; } .evidence thead th { width: 10%; } .evidence thead th:nth-child(1) { width: 14%; } .evidence thead th:nth-child(2) { width: 8.5rem; }
        .evidence thead th:nth-child(3) { width: 14%; } .evidence thead th:nth-child(4) { width: auto; } .evidence thead th:nth-child(5) { width: 17%; }
        .verdict { font-weight: 700; white-space: nowrap; }
        .readings { white-space: nowrap; }
        .pass { color: var(--pass); } .questionable { color: var(--questionable); } .reject { color: var(--reject); }
        td.mark { border-left: 6px solid var(--pass); }
        td.mark.questionable { border-left: 6px dashed var(--questionable); }
        td.mark.reject { border-left: 6px double var(--reject); }
        ul { margin: 0; padding-left: 1.1rem; } td ul { list-style: none; padding: 0; }
        ol.worst { margin: 0; padding-left: 1.5rem; } ol.worst > li { margin: 0 0 .5rem; } ol.worst ul { list-style: none; padding: 0; }
        .marks { display: flex; flex-wrap: wrap; gap: .15rem .9rem; }
        a[aria-label] { text-decoration: none; } a[aria-label] bdi { text-decoration: underline; }
        .overview th[scope=row] { min-width: 11rem; } .overview td:last-child { min-width: 8rem; }
        .overview thead th:nth-last-child(-n+4):nth-last-child(n+2) { width: 7.5rem; } .overview thead th:nth-last-child(5) { width: 40%; }
        .marks a { min-height: 1.5rem; min-width: 1.5rem; }
        ol.cells { list-style: none; margin: .5rem 0; padding: 0; display: flex; flex-wrap: wrap; gap: .15rem; }
        .unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
        .cells a, .cells li > span { display: block; position: relative; width: 2.3rem; height: 2.3rem;
          text-align: center; line-height: 1.15; text-decoration: none; border: 1px solid var(--rule); }
        .cells a { border-bottom: 3px solid; }
        .cells b { display: block; font-weight: 400; font-size: .7rem; color: var(--faint); font-variant-numeric: tabular-nums; }
        .cells i { font-style: normal; font-size: .8rem; }
        tr:target, h4:target, h5:target, .found:target { background: var(--glow); }
        tr:target { outline: 3px solid var(--link); }
        .more { display: none; } tr:target .more { display: block; }
        tr, h4, h5 { scroll-margin-top: 4rem; }
        .all { content-visibility: auto; contain-intrinsic-size: auto 40rem; }
        dt { font-weight: 700; } dd { margin: 0 0 .5rem 1.1rem; }
        img { width: 100%; height: auto; border: 1px solid var(--rule); margin: .75rem 0; }
        @media screen and (prefers-color-scheme: dark) { img { filter: brightness(.82); } }
        .caution { border: 2px solid var(--ink); background: var(--shade); padding: .75rem 1rem; }
        code { font: .85rem "Cascadia Mono", "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; } th code { overflow-wrap: normal; }
        pre { background: var(--shade); padding: .75rem 1rem; white-space: pre-wrap; }
        @media print {
          body { max-width: none; padding: 0; font-size: 10pt; }
          h2, h3, h4, h5 { break-after: avoid; } tr, img, .caution, .cells li { break-inside: avoid; } thead { display: table-header-group; }
          a { color: inherit; text-decoration: none; } .skip, nav { display: none; }
          .wide { overflow: visible; } .evidence, .overview, .fair { min-width: 0; }
          .all { content-visibility: visible; } tr:target, h4:target, h5:target { background: none; outline: none; }
        }
        """;
}
