using ChannelAudit.Verdicts;

namespace ChannelAudit.Lists;

/// <summary>What a person said of a trial or a channel.</summary>
/// <param name="Place">Of what.</param>
/// <param name="Rater">Who said it.</param>
/// <param name="Grade">What.</param>
public sealed record GivenLabel(ListedPlace Place, string Rater, Grade Grade);
