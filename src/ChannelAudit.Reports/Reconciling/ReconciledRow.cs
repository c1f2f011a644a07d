using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>A declared exclusion, or a computed reject that was kept, with the evidence: a row of the table of <c>reconcile</c>.</summary>
public sealed record ReconciledRow
{
    /// <summary>The line of the list; null for a reject that was kept.</summary>
    public int? Line { get; init; }

    /// <summary>The recording's id; as the list has it when it was not found.</summary>
    public required string Recording { get; init; }

    /// <summary>The channel's name, or null for all channels; as the list has it when it was not found.</summary>
    public string? Channel { get; init; }

    /// <summary>The trial's number as text, or null for the whole channel; as the list has it when it was not found.</summary>
    public string? Trial { get; init; }

    /// <summary>The trial's label, or null.</summary>
    public string? Condition { get; init; }

    /// <summary>The answer.</summary>
    public required ReconcileAnswer Answer { get; init; }

    /// <summary>The verdict of the list; null for a reject that was kept.</summary>
    public Grade? Declared { get; init; }

    /// <summary>The reason in the lab's words, or null.</summary>
    public string? DeclaredReason { get; init; }

    /// <summary>The computed verdict, of several the worst; null when nothing was found.</summary>
    public Grade? Verdict { get; init; }

    /// <summary>The verdict after decisions, of several the worst; null likewise.</summary>
    public Grade? Final { get; init; }

    /// <summary>Reason codes of the computed verdicts, worst first.</summary>
    public ImmutableArray<string> Reasons { get; init; } = [];

    /// <summary>Codes of what could not be judged: not the same as good.</summary>
    public ImmutableArray<string> NotAssessed { get; init; } = [];

    /// <summary>The reason of <see cref="Evidence"/>, or null.</summary>
    public string? EvidenceReason { get; init; }

    /// <summary>The number that says most, or null when no number was beyond a limit.</summary>
    public Evidence? Evidence { get; init; }

    /// <summary>The trials that it covers, by computed verdict, each counted once a channel.</summary>
    public VerdictCounts Cells { get; init; } = new(0, 0, 0);

    /// <summary>What else there is to say, or null.</summary>
    public string? Note { get; init; }
}
