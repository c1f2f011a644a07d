using System.Collections.Immutable;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Comparing;

/// <summary>A trial of a channel, or a whole channel, that two audits judge differently: a row of the table of changes.</summary>
public sealed record VerdictChange
{
    /// <summary>The recording's id.</summary>
    public required string Recording { get; init; }

    /// <summary>The label in the file, by which channels of the two audits are matched.</summary>
    public required string Label { get; init; }

    /// <summary>The channel's name in the second audit, or in the first when only that has it.</summary>
    public required string Channel { get; init; }

    /// <summary>The trial's number in the second audit, or in the first when only that has it; null for the whole channel.</summary>
    public int? Trial { get; init; }

    /// <summary>How many trials of the channel were compared.</summary>
    public int OfTrials { get; init; }

    /// <summary>The trial's label, or null.</summary>
    public string? Condition { get; init; }

    /// <summary>The trial's onset in s, or null for the whole channel.</summary>
    public double? OnsetS { get; init; }

    /// <summary>The computed verdict of the first audit; null when only the second has it.</summary>
    public Grade? VerdictA { get; init; }

    /// <summary>The computed verdict of the second audit; null when only the first has it.</summary>
    public Grade? VerdictB { get; init; }

    /// <summary>Reasons that only the first audit gives.</summary>
    public ImmutableArray<string> ReasonsGone { get; init; } = [];

    /// <summary>Reasons that only the second audit gives.</summary>
    public ImmutableArray<string> ReasonsNew { get; init; } = [];

    /// <summary>What only the first audit could not judge.</summary>
    public ImmutableArray<string> NotAssessedGone { get; init; } = [];

    /// <summary>What only the second audit could not judge.</summary>
    public ImmutableArray<string> NotAssessedNew { get; init; } = [];

    /// <summary>The number that decided, or null when none did.</summary>
    public MeasureChange? Measure { get; init; }
}
