using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Methods;

/// <summary>Counts verdicts of one kind of thing.</summary>
public sealed class VerdictTally
{
    private readonly int[] _counts = new int[3];

    /// <summary>All of them.</summary>
    public int Total => _counts.Sum();

    /// <summary>Counts one.</summary>
    public void Add(Grade verdict) => _counts[(int)verdict]++;

    /// <summary>The share of a verdict.</summary>
    public Share Of(Grade verdict) => new(_counts[(int)verdict], Total);
}
