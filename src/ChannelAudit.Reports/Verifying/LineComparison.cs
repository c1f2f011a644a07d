namespace ChannelAudit.Reports.Verifying;

/// <summary>The first line of two texts that differs, and in a table its first cell that does.</summary>
internal static class LineComparison
{
    /// <summary>The first difference, or null when no line differs.</summary>
    public static FileDifference? Of(string file, string there, string again, bool isTable)
    {
        string[] a = there.Split('\n');
        string[] b = again.Split('\n');
        int line = Enumerable.Range(0, Math.Max(a.Length, b.Length)).FirstOrDefault(i => !string.Equals(At(a, i), At(b, i), StringComparison.Ordinal), -1);
        if (line < 0)
        {
            return null;
        }

        string place = FormattableString.Invariant($"line {line + 1}");
        (string? ofA, string? ofB) = (At(a, line), At(b, line));
        return isTable && ofA is { Length: > 0 } && ofB is { Length: > 0 }
            ? Cell(file, place, b[0].Split('\t'), ofA.Split('\t'), ofB.Split('\t'))
            : new FileDifference(file, place, Part(ofA, ofB), Part(ofB, ofA));
    }

    private static string? At(string[] lines, int index) => index < lines.Length ? lines[index] : null;

    private static FileDifference Cell(string file, string place, string[] columns, string[] a, string[] b)
    {
        int cell = Enumerable.Range(0, Math.Max(a.Length, b.Length)).First(i => !string.Equals(At(a, i), At(b, i), StringComparison.Ordinal));
        string column = At(columns, cell) ?? FormattableString.Invariant($"{cell + 1}");
        string row = FileDifference.Short(string.Join(", ", b.Take(Math.Min(cell, 3))));
        return new FileDifference(
            file,
            $"{place}, column {column}" + (row.Length == 0 ? string.Empty : $" ({row})"),
            FileDifference.Short(At(a, cell) ?? FileDifference.Nothing),
            FileDifference.Short(At(b, cell) ?? FileDifference.Nothing));
    }

    // Lines of pages are long: what is said begins a little before the first difference.
    private static string Part(string? line, string? other)
    {
        const int before = 30;
        if (line is null)
        {
            return FileDifference.Nothing;
        }

        int same = line.AsSpan().CommonPrefixLength((other ?? string.Empty).AsSpan());
        return same <= before ? FileDifference.Short(line) : "..." + FileDifference.Short(line[(same - before)..]);
    }
}
