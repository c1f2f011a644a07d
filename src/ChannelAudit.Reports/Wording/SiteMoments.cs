using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Wording;

/// <summary>When a fault of a pilot was there, short: <c>from 01:20 to the end</c>.</summary>
public static class SiteMoments
{
    /// <summary>When a reason holds at a site; empty where it holds all through, or nobody knows.</summary>
    /// <param name="recording">For its length and its trials.</param>
    /// <param name="site">The site's name.</param>
    /// <param name="reason">One of its reasons.</param>
    public static string Of(RecordingResult recording, string site, SiteReason reason)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(reason);
        if (reason.Finding is not { } finding
            || recording.Channels.FirstOrDefault(one => string.Equals(one.Name, site, StringComparison.Ordinal)) is not { } channel)
        {
            return string.Empty;
        }

        int trials = channel.Cells.Count(cell => cell.Findings.Any(one => string.Equals(one.Reason, reason.Code, StringComparison.Ordinal)));
        return finding.Trial is not null && trials > 1
            ? $"in {trials.Plain()} of {Quantities.Many(channel.Cells.Length, "trial")}"
            : IsWhole(finding.FromS, finding.ToS, recording.DurationS) ? string.Empty
            : FigureText.When(finding.FromS, finding.ToS, recording.DurationS, ScatteredFault.Is(recording, channel, finding));
    }

    /// <summary>What was seen that asks for a step, and when, where all that asks for it was there at one time.</summary>
    /// <param name="report">The pilot.</param>
    /// <param name="step">One of its steps.</param>
    public static string Because(PilotReport report, PilotStep step)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(step);
        ImmutableArray<string> moments =
        [
            .. report.Sites
                .Where(site => step.Sites.IsEmpty || step.Sites.Contains(site.Name, StringComparer.Ordinal))
                .SelectMany(site => site.Reasons
                    .Where(reason => step.Reasons.Contains(reason.Code, StringComparer.Ordinal))
                    .Select(reason => Of(report.Recording, site.Name, reason)))
                .Distinct(StringComparer.Ordinal),
        ];
        return moments is [{ Length: > 0 } moment] ? $"{step.Because}; {moment}" : step.Because;
    }

    private static bool IsWhole(double fromS, double toS, double durationS) => fromS <= 0.01 * durationS && toS >= 0.99 * durationS;
}
