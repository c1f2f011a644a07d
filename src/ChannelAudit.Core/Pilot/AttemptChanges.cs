using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Findings;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>What has changed from one attempt to the next, in words.</summary>
public static class AttemptChanges
{
    // A level at rest wanders by half from minute to minute; what doubles or halves was changed.
    private const double MuchTimes = 1.5;
    private const double MuchDecibels = 6;

    // Below the limits of doubt a level means nothing, however it changes.
    private const double RestCountsUv = 3;
    private const double LineCountsUv = 1;

    /// <summary>A line for each site that changed, then the joints; empty when nothing did.</summary>
    public static ImmutableArray<string> Of(PilotAttempt before, PilotAttempt now)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(now);
        return
        [
            .. now.Sites
                .Select(site => (site, Was: before.Sites.FirstOrDefault(one => string.Equals(one.Name, site.Name, StringComparison.Ordinal))))
                .Select(pair => pair.Was is null ? $"{pair.site.Name}: was not there before" : Of(pair.Was, pair.site))
                .OfType<string>(),
            .. before.Sites
                .Where(site => now.Sites.All(one => !string.Equals(one.Name, site.Name, StringComparison.Ordinal)))
                .Select(site => $"{site.Name}: is no longer there"),
            .. before.Joints.Except(now.Joints, StringComparer.Ordinal).Select(joint => $"{joint}: bridge gone"),
            .. now.Joints.Except(before.Joints, StringComparer.Ordinal).Select(joint => $"{joint}: bridge new"),
        ];
    }

    private static string? Of(AttemptSite was, AttemptSite site)
    {
        string[] parts =
        [
            .. Verdict(was.Verdict, site.Verdict),
            .. Level("noise at rest", was.RestUv, site.RestUv, RestCountsUv),
            .. Level("mains", was.LineUv, site.LineUv, LineCountsUv),
            .. Task(was.TaskDecibels, site.TaskDecibels),
            .. Others(was.Reasons, site.Reasons).Select(reason => $"{reason} gone"),
            .. Others(site.Reasons, was.Reasons).Select(reason => $"{reason} new"),
        ];
        return parts.Length == 0 ? null : $"{site.Name}: {string.Join(", ", parts)}";
    }

    private static IEnumerable<string> Verdict(Grade was, Grade now) => was == now ? [] : [$"{Word(was)} to {Word(now)}"];

    private static IEnumerable<string> Level(string what, double? was, double? now, double countsFrom) =>
        was is { } before and > 0 && now is { } after and > 0 && Math.Max(before, after) >= countsFrom && Math.Max(before / after, after / before) >= MuchTimes
            ? [string.Create(CultureInfo.InvariantCulture, $"{what} {before:G2} to {after:G2} \u00B5V")]
            : [];

    private static IEnumerable<string> Task(double? was, double? now) =>
        was is { } before && now is { } after && Math.Abs(after - before) >= MuchDecibels
            ? [string.Create(CultureInfo.InvariantCulture, $"its task {before:+0;-0;0} to {after:+0;-0;0} dB")]
            : [];

    // Joints have lines of their own, and levels say what mains and noise do.
    private static IEnumerable<string> Others(ImmutableArray<string> some, ImmutableArray<string> others) => some
        .Except(others, StringComparer.Ordinal)
        .Where(reason => reason is not (ReasonCode.Bridge or ReasonCode.LineNoise or ReasonCode.NoiseFloor));

    private static string Word(Grade grade) => grade switch { Grade.Pass => "pass", Grade.Questionable => "questionable", _ => "reject" };
}
