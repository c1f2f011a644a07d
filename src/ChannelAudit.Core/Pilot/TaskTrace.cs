using ChannelAudit.Views;

namespace ChannelAudit.Pilot;

/// <summary>A contraction as a picture shows it.</summary>
/// <param name="Trace">The site's signal, its mean taken out.</param>
/// <param name="FromS">Where the contraction begins, seconds from the first stored sample.</param>
/// <param name="ToS">Where it ends.</param>
public sealed record TaskTrace(Trace Trace, double FromS, double ToS);
