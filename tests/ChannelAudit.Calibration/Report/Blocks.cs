namespace ChannelAudit.Calibration.Report;

/// <summary>The parts of a page that the program writes, between <c>begin</c> and <c>end</c> comments; the rest is written by hand.</summary>
internal static class Blocks
{
    /// <summary>The page with one part replaced.</summary>
    /// <exception cref="InvalidOperationException">When the page has no such part.</exception>
    public static string Replace(string page, string name, string text)
    {
        string begin = $"<!-- {name}: begin -->\n";
        string end = $"<!-- {name}: end -->";
        int from = page.IndexOf(begin, StringComparison.Ordinal);
        int to = page.IndexOf(end, StringComparison.Ordinal);
        return from < 0 || to < from
            ? throw new InvalidOperationException($"the page has no part '{name}'")
            : page[..(from + begin.Length)] + text + page[to..];
    }
}
