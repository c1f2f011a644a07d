using System.Collections.Immutable;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>A site in an attempt.</summary>
/// <param name="Name">The site.</param>
/// <param name="Verdict">Its verdict.</param>
/// <param name="Reasons">Its reason codes.</param>
/// <param name="RestUv">Amplitude at rest in µV rms.</param>
/// <param name="LineUv">Mains in µV rms.</param>
/// <param name="TaskDecibels">Its answer to its own task in dB.</param>
public sealed record AttemptSite(
    string Name, Grade Verdict, ImmutableArray<string> Reasons, double? RestUv, double? LineUv, double? TaskDecibels);
