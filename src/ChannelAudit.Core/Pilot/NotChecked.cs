using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Pilot;

/// <summary>What a pilot could not check, in sentences: nothing that was not looked at may pass for good.</summary>
internal static class NotChecked
{
    private const int MostLabels = 6;

    /// <summary>The sentences, the weightiest first.</summary>
    public static ImmutableArray<string> Of(
        RecordingResult recording, StudySetup setup, ImmutableArray<PilotSite> sites, TapEvents taps, TapReport? tapped, decimal? endS, ImmutableArray<Trial> cut) =>
    [
        .. Setup(setup),
        .. Tasks(recording, sites),
        .. Cut(cut),
        .. Readings(recording, sites),
        .. Rest(recording, setup),
        .. Taps(taps, tapped, endS),
        .. Open(sites),
    ];

    private static IEnumerable<string> Setup(StudySetup setup)
    {
        if (setup.Sites.IsEmpty)
        {
            yield return "without a setup: which channel is which site, whether each muscle answers its task, which sites gel can join";
        }
        else if (setup.Sites.Where(site => site.Task is null).Select(site => site.Name).ToArray() is { Length: > 0 } without)
        {
            yield return $"whether the muscle answers a task: the setup names none for {string.Join(", ", without)}";
        }
    }

    private static IEnumerable<string> Tasks(RecordingResult recording, ImmutableArray<PilotSite> sites)
    {
        string[] missing = [.. sites.Where(site => site.Task is { Times: 0 }).Select(site => $"'{site.Task!.Task}' ({site.Name})")];
        if (missing.Length > 0)
        {
            string[] labels = [.. recording.Trials.Select(trial => trial.Label).OfType<string>().Distinct(StringComparer.Ordinal)];
            string there = labels.Length == 0 ? "it has no labels" : $"its labels are {string.Join(", ", labels.Take(MostLabels).Select(label => $"'{label}'"))}{(labels.Length > MostLabels ? ", ..." : string.Empty)}";
            yield return $"tasks that the recording does not have: {string.Join(", ", missing)}; {there}";
        }

        string[] silent = [.. sites.Where(site => site.Task is { Times: > 0, WhyNot: not null }).Select(site => $"{site.Name}: {site.Task!.WhyNot}")];
        if (silent.Length > 0)
        {
            yield return $"the answer to a task: {string.Join("; ", silent)}";
        }
    }

    private static IEnumerable<string> Cut(ImmutableArray<Trial> cut)
    {
        if (!cut.IsEmpty)
        {
            string[] labels = [.. cut.Select(trial => trial.Label ?? "no label").Distinct(StringComparer.Ordinal)];
            yield return $"{(cut.Length == 1 ? "a trial" : FormattableString.Invariant($"{cut.Length} trials"))} that the recording ends before: {string.Join(", ", labels.Take(MostLabels).Select(label => $"'{label}'"))}{(labels.Length > MostLabels ? ", ..." : string.Empty)}";
        }
    }

    private static IEnumerable<string> Readings(RecordingResult recording, ImmutableArray<PilotSite> sites)
    {
        string[] without = [.. sites.Where(site => site.Readings is not { IsComplete: true }).Select(site => site.Name)];
        if (recording.Impedance is not null && without.Length > 0)
        {
            yield return $"contacts: the readings lack a pair, or all, of {string.Join(", ", without)}";
        }
    }

    private static IEnumerable<string> Rest(RecordingResult recording, StudySetup setup)
    {
        if (!setup.Sites.IsEmpty && recording.Trials.All(trial => trial.Role != TrialRole.Rest))
        {
            yield return "rest as it was asked for: no trial has a label of rest, so the quietest seconds stand for it";
        }
    }

    private static IEnumerable<string> Taps(TapEvents taps, TapReport? tapped, decimal? endS)
    {
        if (taps.Unknown.Length > 0)
        {
            yield return $"taps on no known site: {string.Join(", ", taps.Unknown.Select(label => $"'{label}'"))}";
        }

        if (tapped?.NotSeen.IsEmpty == false)
        {
            yield return $"taps on {string.Join(", ", tapped.NotSeen)}: fewer than two were seen; tap a little more firmly";
        }

        if (tapped is not null && endS is null)
        {
            yield return "the recording without its taps: other trials come after them, so they disturb what is judged; make the taps last";
        }
    }

    // One sentence a reason: the cause is mostly the same at every site.
    private static IEnumerable<string> Open(ImmutableArray<PilotSite> sites) => sites
        .SelectMany(site => site.NotAssessed.Select(open => (site.Name, open.Reason, open.Cause)))
        .Where(open => !string.Equals(open.Reason, ReasonCode.WeakResponse, StringComparison.Ordinal) || sites.All(site => site.Task is null))
        .Select(open => string.Equals(open.Reason, ReasonCode.Bridge, StringComparison.Ordinal) ? OfPair(open) : open)
        .GroupBy(open => (open.Reason, open.Cause))
        .OrderBy(group => ReasonCode.All.IndexOf(group.Key.Reason))
        .Select(group => $"{group.Key.Reason}{Where([.. group.Select(open => open.Name).Distinct(StringComparer.Ordinal)], sites.Length)}: {group.Key.Cause}");

    // What is open about a bridge is open about a pair, which its cause names first.
    private static (string Name, string Reason, string Cause) OfPair((string Name, string Reason, string Cause) open) =>
        open.Cause.Split(": ", 2) is [var pair, var cause] ? (string.Join(" and ", pair.Split(" and ").Order(StringComparer.Ordinal)), open.Reason, cause) : open;

    private static string Where(string[] names, int all) => names.Length == all ? string.Empty : $" of {string.Join(", ", names)}";
}
