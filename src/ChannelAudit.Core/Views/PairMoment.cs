namespace ChannelAudit.Views;

/// <summary>A fraction of a second of two channels.</summary>
/// <param name="State">What the two sites did.</param>
/// <param name="A">The first channel.</param>
/// <param name="B">The second, over the same time.</param>
public sealed record PairMoment(PairState State, Trace A, Trace B);
