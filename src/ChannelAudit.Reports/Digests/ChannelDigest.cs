using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Digests;

/// <summary>A channel in a line.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Verdict">The final verdict.</param>
/// <param name="Reasons">The codes of its reasons, worst first.</param>
/// <param name="Trials">Its trials by final verdict.</param>
public sealed record ChannelDigest(string Name, Grade Verdict, ImmutableArray<string> Reasons, VerdictCounts Trials);
