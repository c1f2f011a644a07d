using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>A channel in a scene.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Its unit as people write it; empty for raw codes.</param>
/// <param name="Excerpt">Its trace.</param>
internal sealed record CellTrace(string Name, string Unit, SignalExcerpt Excerpt);
