using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Pilot;

/// <summary>What a pilot could not check, in sentences: nothing that was not looked at may pass for good.</summary>
internal static class NotChecked
{
    private const int MostLabels = 6;

    /// <summary>The sentences, the weightiest first.</summary>
    /// <param name="seen">What the pilot had to go by.</param>
    public static ImmutableArray<string> Of(PilotMaterial seen) =>
    [
        .. Setup(seen.Setup),
        .. Tasks(seen.Recording, seen.Sites),
        .. Cut(seen.Cut),
        .. Readings(seen),
        .. Rest(seen.Recording, seen.Setup),
        .. Taps(seen.Taps, seen.Tapped, seen.EndS),
        .. Open(seen),
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
            string there = labels.Length == 0 ? "it has no labels" : $"its labels are {Quoted(labels)}";
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
            string trials = cut.Length == 1 ? "a trial" : FormattableString.Invariant($"{cut.Length} trials");
            yield return $"{trials} that the recording ends before: {Quoted(labels)}";
        }
    }

    private static IEnumerable<string> Readings(PilotMaterial seen)
    {
        if (seen.Recording.Impedance is not { } readings)
        {
            yield break;
        }

        string[] without = [.. seen.Sites.Where(site => site.Readings is not { IsComplete: true }).Select(site => site.Name)];
        if (!seen.ReadingsOfOthers.IsEmpty)
        {
            string recordings = seen.ReadingsOfOthers.Length == 1 ? "recording" : "recordings";
            yield return $"contacts: {readings.FileName} names {recordings} {Some(seen.ReadingsOfOthers)}, not this one ({seen.Recording.Id})";
        }
        else if (without.Length > 0)
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

    // One sentence a reason: the cause is mostly the same at every site. What is open about a bridge is open about a pair.
    private static IEnumerable<string> Open(PilotMaterial seen)
    {
        (string Name, string Reason, string Cause)[] pairs =
        [
            .. BridgeGap.Of(seen.Recording.Pairs, seen.Setup)
                .Select(pair => (string.Join(" and ", new[] { pair.One, pair.Other }.Order(StringComparer.Ordinal)), ReasonCode.Bridge, pair.Cause)),
        ];
        return seen.Sites
            .SelectMany(site => site.NotAssessed.Select(open => (site.Name, open.Reason, open.Cause)))
            .Where(open => !Is(open.Reason, ReasonCode.WeakResponse) || seen.Sites.All(site => site.Task is null))
            .Where(open => !Is(open.Reason, ReasonCode.Bridge) || seen.Recording.Pairs.IsEmpty)
            .Concat(pairs)
            .GroupBy(open => (open.Reason, open.Cause))
            .OrderBy(group => ReasonCode.All.IndexOf(group.Key.Reason))
            .Select(group =>
            {
                int all = Is(group.Key.Reason, ReasonCode.Bridge) ? Math.Max(2, seen.Recording.Pairs.Length) : seen.Sites.Length;
                return $"{group.Key.Reason}{Where([.. group.Select(open => open.Name).Distinct(StringComparer.Ordinal)], all)}: {group.Key.Cause}";
            });
    }

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);

    private static string Some(IEnumerable<string> names) =>
        $"{string.Join(", ", names.Take(MostLabels))}{(names.Skip(MostLabels).Any() ? ", ..." : string.Empty)}";

    private static string Quoted(IEnumerable<string> labels) => Some(labels.Select(label => $"'{label}'"));

    private static string Where(string[] names, int all) => names.Length == all ? string.Empty : $" of {string.Join(", ", names)}";
}
