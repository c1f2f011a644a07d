using System.Collections.Immutable;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>A finding as the page says it.</summary>
/// <param name="Letter">The letter on the trace.</param>
/// <param name="Name">The reason in words.</param>
/// <param name="Grade">Its grade.</param>
/// <param name="Text">What was seen and the likely cause.</param>
/// <param name="Measured">Its numbers beside their limits.</param>
/// <param name="Effect">What it does to the score; empty when that is not said.</param>
public sealed record FindingView(string Letter, string Name, string Grade, string Text, ImmutableArray<string> Measured, string Effect);
