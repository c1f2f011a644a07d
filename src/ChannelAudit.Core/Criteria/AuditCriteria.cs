using System.Collections.Immutable;

namespace ChannelAudit.Criteria;

/// <summary>All limits in force: the defaults, or the defaults with a file's differences.</summary>
public sealed record AuditCriteria
{
    /// <summary>One criterion a reason code, in the order in which they are shown.</summary>
    public required ImmutableArray<Criterion> All { get; init; }

    /// <summary>SHA-256 over the canonical text of all limits in force (not over the file), in lower-case hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>The file the differences came from, or null for the defaults.</summary>
    public string? FileName { get; init; }

    /// <summary>What the file says of the day it was frozen, or null when it was not.</summary>
    public FreezeRecord? Frozen { get; init; }

    /// <summary>The criterion of a reason code.</summary>
    /// <exception cref="KeyNotFoundException">When there is none.</exception>
    public Criterion For(string reason)
    {
        foreach (Criterion criterion in All)
        {
            if (string.Equals(criterion.Reason, reason, StringComparison.Ordinal))
            {
                return criterion;
            }
        }

        throw new KeyNotFoundException(reason);
    }
}
