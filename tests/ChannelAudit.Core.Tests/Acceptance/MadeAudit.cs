using System.Collections.Immutable;
using System.Globalization;
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
    /// <summary>The rates that the sessions take in turn: common ones, a power of two, and one that is no whole number.</summary>
    public static ImmutableArray<Rational> Rates { get; } = [new(2000, 1), new(1000, 1), new(1024, 1), new(4974, 10)];

    /// <summary>The three sites.</summary>
    public static ImmutableArray<string> Sites { get; } = ["cheek", "brow", "eye"];

    /// <summary>A short session: rest, a contraction of each muscle at 25 µV, scored trials with modest answers, rest.</summary>
    public static SessionPlan Session(ulong seed, Rational? rate = null, int scored = 8, decimal restS = 14) => new Protocol
    {
        ScoredTrials = scored,
        RestS = restS,
        TaskS = 4,
        PauseS = 3,
        Answers = [[new SiteActivity("brow", 7)], [new SiteActivity("cheek", 9), new SiteActivity("eye", 5)]],
    }.Plan(seed) with
    { Rate = rate ?? new Rational(2000, 1) };

    /// <summary>What every real room and face adds: shared mains of 0.3 µV that wander, a tenth of crosstalk both ways, settling of 50 µV/min.</summary>
    public static SessionPlan WithConfusers(SessionPlan plan, params ReadOnlySpan<Fault> faults) => plan with
    {
        Faults =
        [
            new MainsPickup(Sites, 0.3) { WanderHz = 0.03 },
            new Crosstalk("cheek", "eye", 0.1),
            new Crosstalk("eye", "cheek", 0.1),
            new Drift("cheek", 50),
            new Drift("brow", -50),
            new Drift("eye", 50),
            .. faults,
        ],
    };

    /// <summary>All of that, and leads that sway by 20 µV together.</summary>
    public static SessionPlan WithConfusersAndMotion(SessionPlan plan, params ReadOnlySpan<Fault> faults) =>
        WithConfusers(plan, [new Motion(Sites, 20), .. faults]);

    /// <summary>Audits a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="moreSetup">Tables to add to its setup.</param>
    /// <param name="criteria">A file of limits; empty for the defaults.</param>
    public static RecordingResult Of(SessionPlan plan, string moreSetup = "", string criteria = "")
    {
        using Recording recording = MadeRecording.Make(plan).Open();
        return Of(recording, plan, moreSetup, criteria);
    }

    /// <summary>Audits a recording with the setup of a plan.</summary>
    public static RecordingResult Of(Recording recording, SessionPlan plan, string moreSetup = "", string criteria = "") =>
        Of(recording, SetupOf(plan, moreSetup), criteria);

    /// <summary>The setup of a plan.</summary>
    public static StudySetup SetupOf(SessionPlan plan, string moreSetup = "") => SetupFile.Parse(SetupText.Of(plan) + moreSetup, "setup.toml");

    /// <summary>Audits a recording with a setup.</summary>
    public static RecordingResult Of(Recording recording, StudySetup setup, string criteria = "")
    {
        TrialSet trials = TrialPlan.Of(recording, TrialSources.Choose(recording, setup, null, RecordingCompanions.None), setup);
        AuditInput input = new()
        {
            Id = "made",
            Path = "made",
            Sha256 = string.Empty,
            Criteria = CriteriaFile.Parse(criteria, "lab.toml"),
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

    /// <summary>Every cell and channel that did not pass, for a message; empty when all passed.</summary>
    public static string Blemishes(RecordingResult result) => string.Join(
        "; ",
        result.Channels.SelectMany(channel => channel.Cells
            .Where(cell => cell.Verdict != Grade.Pass)
            .Select(cell => FormattableString.Invariant($"{channel.Name} {cell.Trial} {cell.Verdict} {string.Join('+', cell.Reasons)}: {string.Join(" / ", cell.Findings.Select(one => one.Text))}"))
            .Concat(channel.Verdict == Grade.Pass ? [] : [FormattableString.Invariant($"{channel.Name} {channel.Verdict} {string.Join('+', channel.Reasons)}")])));

    /// <summary>Everything that was decided and measured, without labels.</summary>
    public static string Everything(RecordingResult result) => string.Join(
        '\n',
        result.Channels.SelectMany(channel => channel.Cells
            .Select(cell => FormattableString.Invariant(
                $"{channel.Name} {cell.Trial} {cell.Verdict} {string.Join('+', cell.Reasons)} {string.Join('|', cell.NotAssessed)} {string.Join('|', cell.Findings.Select(one => one.Text + one.Cause))} {Values(cell.Measures)}"))
            .Append(FormattableString.Invariant(
                $"{channel.Name} {channel.Verdict} {string.Join('+', channel.Reasons)} {string.Join('|', channel.NotAssessed)} {string.Join('|', channel.Findings.Select(one => one.Text))} {Values(channel.Measures)}")))
            .Concat(result.Pairs.Select(pair => FormattableString.Invariant($"{pair.ChannelA} {pair.ChannelB} {Words(pair.Evidence)} {string.Join('|', pair.Rows.Select(Words))}"))));

    /// <summary>The channel of a site.</summary>
    public static ChannelResult Channel(RecordingResult result, string site) => result.Channels.Single(channel => string.Equals(channel.Name, site, StringComparison.Ordinal));

    private static string Words(BridgeEvidence one) => FormattableString.Invariant(
        $"{one.Decision} {one.NotAssessed} {one.RestSegments} {one.ActiveASegments} {one.ActiveBSegments} {one.RhoRest} {one.RhoHighRest} {one.ImaginaryRest} {one.RhoActiveA} {one.RhoActiveB} {one.GainAb} {one.GainBa}");

    private static string Words(PairRow row) =>
        FormattableString.Invariant($"{row.Trial} {row.Rho} {row.RhoHigh} {row.Distance} {row.Coherence} {row.GainAb} {row.GainBa} {row.Note}");

    private static string Values(IEnumerable<GradedMeasure> measures) => string.Join(
        ',', measures.Select(one => one.Value.Value?.ToString("R", CultureInfo.InvariantCulture) ?? one.Value.Note));

    private static int[] GradedFor(RecordingResult result, string site, string reason, Grade least) =>
    [
        .. Channel(result, site).Cells
            .Where(cell => cell.Findings.Any(finding => finding.Grade >= least && string.Equals(finding.Reason, reason, StringComparison.Ordinal))
                || (string.Equals(reason, "bridge", StringComparison.Ordinal) && cell.Verdict >= least && cell.Reasons.Contains("bridge", StringComparer.Ordinal)))
            .Select(cell => cell.Trial),
    ];
}
