namespace ChannelAudit.Text;

/// <summary>Finds the known name that a mistyped one was probably meant to be.</summary>
/// <remarks>
/// Optimal string alignment (insertions, deletions, substitutions and exchanges of neighbours each count 1), as in Damerau,
/// "A technique for computer detection and correction of spelling errors", Comm. ACM 7:171 (1964). Case does not count, and
/// <c>-</c>, <c>_</c> and blank are the same. A name that begins the other one counts as near.
/// </remarks>
public static class NearestName
{
    /// <summary>The nearest of the known names, or null when none is near enough to be worth offering.</summary>
    /// <param name="name">The name that was given.</param>
    /// <param name="known">The names that exist; of two equally near ones the first is taken.</param>
    public static string? Of(string name, IEnumerable<string> known)
    {
        string given = Fold(name);
        string? nearest = null;
        int least = int.MaxValue;
        foreach (string candidate in known)
        {
            string folded = Fold(candidate);
            int distance = Distance(given, folded);
            if (distance < least && IsNear(given, folded, distance))
            {
                nearest = candidate;
                least = distance;
            }
        }

        return nearest;
    }

    /// <summary>How many single edits turn one text into the other.</summary>
    internal static int Distance(string a, string b)
    {
        var rows = new int[a.Length + 1][];
        for (int i = 0; i <= a.Length; i++)
        {
            rows[i] = new int[b.Length + 1];
            rows[i][0] = i;
        }

        for (int j = 0; j <= b.Length; j++)
        {
            rows[0][j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                int best = Math.Min(Math.Min(rows[i - 1][j] + 1, rows[i][j - 1] + 1), rows[i - 1][j - 1] + cost);
                bool exchanged = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
                rows[i][j] = exchanged ? Math.Min(best, rows[i - 2][j - 2] + 1) : best;
            }
        }

        return rows[a.Length][b.Length];
    }

    private static bool IsNear(string given, string known, int distance)
    {
        if (given.Length == 0 || known.Length == 0)
        {
            return false;
        }

        int longer = Math.Max(given.Length, known.Length);
        int shorter = Math.Min(given.Length, known.Length);
        bool isBeginning = shorter >= 3
            && (known.StartsWith(given, StringComparison.Ordinal) || given.StartsWith(known, StringComparison.Ordinal));
        return (longer >= 3 && distance <= (longer + 1) / 3) || isBeginning;
    }

    // Names longer than any of ours cannot be near; cutting them keeps the table of distances small.
    private static string Fold(string name)
    {
        string cut = name.Length > 64 ? name[..64] : name;
        return cut.Trim().ToLowerInvariant().Replace('-', '_').Replace(' ', '_');
    }
}
