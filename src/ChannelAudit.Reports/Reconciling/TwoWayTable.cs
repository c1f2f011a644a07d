using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>How often each answer of one stands against each answer of another, and how far they agree beyond chance.</summary>
/// <param name="answers">Number of answers, at least 2.</param>
public sealed class TwoWayTable(int answers)
{
    private readonly long[] _counts = new long[answers * answers];

    /// <summary>Number of answers.</summary>
    public int Answers => answers;

    /// <summary>All that was counted.</summary>
    public long Total => _counts.Sum();

    /// <summary>Counts one.</summary>
    /// <param name="row">The answer of the first, from 0.</param>
    /// <param name="column">The answer of the second, from 0.</param>
    public void Add(int row, int column) => _counts[(row * answers) + column]++;

    /// <summary>How often the first gave one answer and the second another.</summary>
    public long Count(int row, int column) => _counts[(row * answers) + column];

    /// <summary>Cohen's kappa.</summary>
    public KappaResult Kappa(KappaWeights weights = KappaWeights.Unweighted) => CohensKappa.Of(_counts, answers, weights);
}
