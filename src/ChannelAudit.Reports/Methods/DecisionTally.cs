using ChannelAudit.Decisions;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Methods;

/// <summary>Counts verdicts that persons gave, by the direction in which they changed the computed one.</summary>
public sealed class DecisionTally
{
    /// <summary>To a worse verdict.</summary>
    public int Worse { get; private set; }

    /// <summary>To a better one.</summary>
    public int Better { get; private set; }

    /// <summary>The computed verdict was confirmed.</summary>
    public int Same { get; private set; }

    /// <summary>All of them.</summary>
    public int Total => Worse + Better + Same;

    /// <summary>Counts one.</summary>
    /// <param name="computed">The computed verdict.</param>
    /// <param name="decision">The decision that holds; null counts nothing.</param>
    public void Add(Grade computed, StatedDecision? decision)
    {
        if (decision?.Decision.Verdict is not { } final)
        {
            return;
        }

        Worse += final > computed ? 1 : 0;
        Better += final < computed ? 1 : 0;
        Same += final == computed ? 1 : 0;
    }
}
