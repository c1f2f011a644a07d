using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Made sessions of an invented study, audited as a file would be. The engine sees samples, labels and setup, never the plan.</summary>
internal static class MadeAudit
{
    /// <summary>A short session: rest, a contraction of each muscle, scored trials with modest answers, rest.</summary>
    public static SessionPlan Session(ulong seed, int rateHz = 2000, int scored = 8) => new Protocol
    {
        ScoredTrials = scored,
        RestS = 14,
        TaskS = 4,
        PauseS = 3,
        Answers = [[new SiteActivity("brow", 7)], [new SiteActivity("cheek", 9), new SiteActivity("eye", 5)]],
    }.Plan(seed) with
    { Rate = new Rational(rateHz, 1) };

    /// <summary>What every real room and face adds and no verdict may mind: a whisper of mains, crosstalk of a tenth, ordinary settling.</summary>
    public static SessionPlan WithConfusers(SessionPlan plan, params ReadOnlySpan<Fault> faults) => plan with
    {
        Amplifier = plan.Amplifier with { SettlingUvPerMin = 50 },
        Faults =
        [
            new MainsPickup(["cheek", "brow", "eye"], 0.3) { WanderHz = 0.03 },
            new Crosstalk("cheek", "eye", 0.1),
            .. faults,
        ],
    };

    /// <summary>Audits a plan.</summary>
    public static RecordingResult Of(SessionPlan plan, AuditCriteria? criteria = null)
    {
        using Recording recording = MadeRecording.Make(plan).Open();
        StudySetup setup = SetupFile.Parse(SetupText.Of(plan), "setup.toml");
        TrialSet trials = TrialPlan.Of(recording, TrialSources.Choose(recording, setup, null, RecordingCompanions.None), setup);
        AuditInput input = new()
        {
            Id = "made",
            Path = "made",
            Sha256 = string.Empty,
            Criteria = criteria ?? DefaultCriteria.All,
            Setup = setup,
            Trials = trials.Trials,
            TrialsFrom = "annotations",
        };
        return Audit.Of(recording, input, CancellationToken.None);
    }

    /// <summary>Numbers of the trials of a site that are rejected for a reason.</summary>
    public static int[] RejectedFor(RecordingResult result, string site, string reason) => GradedFor(result, site, reason, Grade.Reject);

    /// <summary>Numbers of the trials of a site that are at least questionable for a reason.</summary>
    public static int[] FoundFor(RecordingResult result, string site, string reason) => GradedFor(result, site, reason, Grade.Questionable);

    /// <summary>Every cell that did not pass, for a message.</summary>
    public static string Blemishes(RecordingResult result) => string.Join(
        "; ",
        result.Channels.SelectMany(channel => channel.Cells
            .Where(cell => cell.Verdict != Grade.Pass)
            .Select(cell => FormattableString.Invariant($"{channel.Name} {cell.Trial} {cell.Verdict} {string.Join('+', cell.Reasons)}: {string.Join(" / ", cell.Findings.Select(one => one.Text))}")))
            .Concat(result.Channels.Where(channel => channel.Verdict != Grade.Pass).Select(channel => FormattableString.Invariant($"{channel.Name} {channel.Verdict} {string.Join('+', channel.Reasons)}"))));

    /// <summary>The channel of a site.</summary>
    public static ChannelResult Channel(RecordingResult result, string site) => result.Channels.Single(channel => string.Equals(channel.Name, site, StringComparison.Ordinal));

    private static int[] GradedFor(RecordingResult result, string site, string reason, Grade least)
    {
        ChannelResult channel = Channel(result, site);
        return
        [
            .. channel.Cells
                .Where(cell => cell.Findings.Any(finding => finding.Grade >= least && string.Equals(finding.Reason, reason, StringComparison.Ordinal))
                    || (string.Equals(reason, "bridge", StringComparison.Ordinal) && cell.Verdict >= least && cell.Reasons.Contains("bridge", StringComparer.Ordinal)))
                .Select(cell => cell.Trial),
        ];
    }
}
