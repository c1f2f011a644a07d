using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Comparing;

/// <summary>How often each verdict of one audit stands against each verdict of the other.</summary>
public sealed class VerdictCrossing
{
    private const int Verdicts = 3;

    private readonly int[] _counts = new int[Verdicts * Verdicts];

    /// <summary>All that both audits have.</summary>
    public int Total => _counts.Sum();

    /// <summary>Counts one.</summary>
    public void Add(Grade a, Grade b) => _counts[((int)a * Verdicts) + (int)b]++;

    /// <summary>How many are <paramref name="a"/> in the first and <paramref name="b"/> in the second audit.</summary>
    public int Count(Grade a, Grade b) => _counts[((int)a * Verdicts) + (int)b];
}
