using System.Collections.Immutable;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Decisions;

/// <summary>The computed verdict that stood beside a decision when it was made.</summary>
/// <param name="Channel">The channel's name.</param>
/// <param name="Verdict">Its verdict, or that of the trial in it.</param>
/// <param name="Reasons">The reason codes, worst first.</param>
public sealed record ComputedVerdict(string Channel, Grade Verdict, ImmutableArray<string> Reasons);
