namespace ChannelAudit.Reports.Bids;

/// <summary>A column of an exported table, as its sidecar defines it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Meaning">What it holds.</param>
internal sealed record BidsColumn(string Name, string Meaning)
{
    /// <summary>The unit, or null.</summary>
    public string? Unit { get; init; }

    /// <summary>The values it can have, or empty when it is open.</summary>
    public IReadOnlyList<(string Value, string Meaning)> Levels { get; init; } = [];
}
