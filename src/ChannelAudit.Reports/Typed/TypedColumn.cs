namespace ChannelAudit.Reports.Typed;

/// <summary>A column of a typed table. Every column may lack values.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Unit">The unit of its numbers; null where there is none to tell.</param>
internal sealed record TypedColumn(string Name, CellKind Kind = CellKind.Text, string? Unit = null);
