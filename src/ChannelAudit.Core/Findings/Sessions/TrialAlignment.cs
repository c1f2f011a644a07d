using System.Collections.Immutable;

namespace ChannelAudit.Findings.Sessions;

/// <summary>Lays the labels that were found along those that were to be: which is missing, which is too many.</summary>
/// <remarks>
/// Longest common subsequence, by the usual table: Wagner and Fischer, J. ACM 21:168 (1974), without substitutions. Of equally long ones that which keeps the
/// earliest labels found.
/// </remarks>
internal sealed class TrialAlignment
{
    private TrialAlignment(ImmutableArray<int> foundOf, ImmutableArray<int> extra)
    {
        FoundOf = foundOf;
        Extra = extra;
    }

    /// <summary>For each expected label the position of the one found for it; -1 when there is none.</summary>
    public ImmutableArray<int> FoundOf { get; }

    /// <summary>Positions of labels found that have no place, in order.</summary>
    public ImmutableArray<int> Extra { get; }

    /// <summary>Whether two lists are short enough to be laid along each other.</summary>
    public static bool CanDo(int expected, int found) => (long)expected * found <= 16_000_000;

    /// <summary>Lays them along each other.</summary>
    public static TrialAlignment Of(ImmutableArray<string> expected, ImmutableArray<string?> found)
    {
        int[,] common = new int[expected.Length + 1, found.Length + 1];
        for (int i = expected.Length - 1; i >= 0; i--)
        {
            for (int j = found.Length - 1; j >= 0; j--)
            {
                common[i, j] = Same(expected[i], found[j]) ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        int[] foundOf = new int[expected.Length];
        Array.Fill(foundOf, -1);
        List<int> extra = [];
        int at = 0;
        for (int j = 0; j < found.Length; j++)
        {
            // What is expected but comes too late for the longest agreement is missing here.
            while (at < expected.Length && !Same(expected[at], found[j]) && common[at + 1, j] == common[at, j])
            {
                at++;
            }

            if (at < expected.Length && Same(expected[at], found[j]))
            {
                foundOf[at++] = j;
            }
            else
            {
                extra.Add(j);
            }
        }

        return new TrialAlignment([.. foundOf], [.. extra]);
    }

    private static bool Same(string expected, string? found) => string.Equals(expected, found, StringComparison.Ordinal);
}
