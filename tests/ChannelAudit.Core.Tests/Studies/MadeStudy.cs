using System.Collections.Immutable;
using ChannelAudit.Core.Tests.Acceptance;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Studies;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Core.Tests.Studies;

/// <summary>An invented study: faces that differ up to four times in amplitude, one session each, with crosstalk and blinks.</summary>
internal static class MadeStudy
{
    private static readonly ImmutableArray<double> Faces = [1, 2, 0.5, 1.4, 0.7];
    private static readonly Lazy<ImmutableArray<RecordingResult>> Five = new(() => [.. Enumerable.Range(0, Faces.Length).Select(i => Audited(FormattableString.Invariant($"p{i + 1}"), Plan((ulong)(100 + i), Faces[i])))]);

    /// <summary>Five recordings with nothing odd.</summary>
    public static ImmutableArray<RecordingResult> Clean => Five.Value;

    /// <summary>A session of a face.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="strength">How strong its muscles are, at rest and in answers.</param>
    public static SessionPlan Plan(ulong seed, double strength)
    {
        SessionPlan plan = new Protocol
        {
            ScoredTrials = 6,
            RestS = 14,
            TaskS = 4,
            PauseS = 3,
            ContractionUv = 25 * strength,
            Answers = [[new SiteActivity("brow", 7 * strength)], [new SiteActivity("cheek", 9 * strength), new SiteActivity("eye", 5 * strength)]],
        }.Plan(seed, [.. SitePlan.Face.Select(site => site with { RestUv = site.RestUv * strength })]);
        return MadeAudit.WithConfusers(plan with { Rate = new Rational(1000, 1) }, new Blinks("eye", 150, 4.5m));
    }

    /// <summary>Audits a session under an id.</summary>
    public static RecordingResult Audited(string id, SessionPlan plan, Func<Recording, Recording>? alter = null)
    {
        using Recording recording = MadeRecording.Make(plan).Open();
        Recording own = alter is null ? recording : alter(recording);
        return MadeAudit.Of(own, plan) with { Id = id, Sha256 = "of " + id };
    }

    /// <summary>A recording of the rest's kind with samples of one channel, or of all, changed.</summary>
    public static RecordingResult Changed(string id, ulong seed, string word, Func<double, double> change) =>
        Audited(id, Plan(seed, 1), recording => Altered.Changed(recording, word, all => Array.ConvertAll(all, value => change(value)), null));

    /// <summary>What is found in some recordings, each as a line.</summary>
    public static string[] Found(params IEnumerable<RecordingResult> results) =>
        [.. Of(results).Select(one => $"{one.Kind} {string.Join('+', one.Recordings)} {one.Channel ?? "-"}: {one.Text}")];

    /// <summary>What is found in some recordings.</summary>
    public static ImmutableArray<StudyFinding> Of(IEnumerable<RecordingResult> results)
    {
        OddRecordings odd = new();
        foreach (RecordingResult result in results)
        {
            odd.Add(result);
        }

        return odd.Found();
    }

    /// <summary>A result whose channels have another summary.</summary>
    public static RecordingResult With(RecordingResult result, string id, Func<ChannelSignal, ChannelSignal> change) => result with
    {
        Id = id,
        Sha256 = "of " + id,
        Channels = [.. result.Channels.Select(channel => channel with { Signal = change(channel.Signal!) })],
    };
}
