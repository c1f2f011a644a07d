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
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>What verdicts would be by other limits, against audits that were really made with those limits.</summary>
public sealed class LimitSweepTests
{
    private static readonly ImmutableArray<Fault> EveryKind =
    [
        new MainsPickup(["cheek"], 6),
        new BroadbandNoise(["brow"], 4),
        new Drift("eye", 900) { Span = new FaultSpan(20, null) },
        new ElectrodePops("brow", 400, 6) { Span = new FaultSpan(40, 60) },
        new Flatline("eye") { Span = new FaultSpan(52, 52.15M) },
        new NarrowPeak(["eye"], 2, 144),
        ElectrodeBridge.OneNode("cheek", "eye", 1) with { Span = new FaultSpan(30, null) },
    ];

    // One audit each: those that the faults meet, and one that they do not.
    private static readonly string[] Tried = ["line-noise", "noise-floor", "drift", "pops", "bridge", "clipping", "bad-trials"];

    [Theory]
    [InlineData("")]
    [InlineData("[scoring]\nhighpass_hz = 20.0\n")]
    public void EveryRowIsWhatAnAuditWithTheseLimitsCounts(string scoring)
    {
        using Recording recording = Recorded(out StudySetup setup, scoring);
        ImmutableArray<MovedLimits> rows = Audited(recording, setup, DefaultCriteria.All, isCounted: true).Sensitivity!.Value;
        MovedLimits inForce = Assert.Single(rows, row => row.Factor is 1);

        Assert.Equal(Counted(Audited(recording, setup, DefaultCriteria.All)), (inForce.Trials, inForce.Channels));
        foreach (double factor in new[] { MovedLimits.Factors[0], MovedLimits.Factors[^1] })
        {
            Assert.Equal(Counted(Audited(recording, setup, ScaledLimits.Of(DefaultCriteria.All, factor))), Counts(rows, MovedLimits.AllReasons, factor));
            foreach (Criterion criterion in DefaultCriteria.All.All.Where(one => Tried.Contains(one.Reason, StringComparer.Ordinal)))
            {
                AuditCriteria one = DefaultCriteria.All with
                {
                    All = [.. DefaultCriteria.All.All.Select(other => ReferenceEquals(other, criterion) ? ScaledLimits.Of(other, factor) : other)],
                };

                Assert.Equal(Counted(Audited(recording, setup, one)), Counts(rows, criterion.Reason, factor));
            }
        }
    }

    [Fact]
    public void OnlyReasonsWhoseLimitsChangeAVerdictAreListed()
    {
        using Recording recording = Recorded(out StudySetup setup, string.Empty);
        ImmutableArray<MovedLimits> rows = Audited(recording, setup, DefaultCriteria.All, isCounted: true).Sensitivity!.Value;

        Assert.Contains(rows, row => string.Equals(row.Reason, "line-noise", StringComparison.Ordinal));
        Assert.DoesNotContain(rows, row => string.Equals(row.Reason, "clipping", StringComparison.Ordinal));
    }

    private static Recording Recorded(out StudySetup setup, string scoring)
    {
        SessionPlan plan = new Protocol { ScoredTrials = 8, RestS = 10, TaskS = 4, PauseS = 2, Answers = [[new SiteActivity("brow", 7)]] }.Plan(42, SitePlan.Face) with
        {
            Amplifier = new AmplifierPlan { HighpassHz = 0, Bits = 24 },
            Faults = EveryKind,
        };
        setup = SetupFile.Parse(SetupText.Of(plan) + scoring, "setup.toml");
        return MadeRecording.Make(plan).Open();
    }

    private static RecordingResult Audited(Recording recording, StudySetup setup, AuditCriteria criteria, bool isCounted = false) => Audit.Of(
        recording,
        new AuditInput
        {
            Id = "made",
            Path = "made",
            Sha256 = string.Empty,
            Criteria = criteria,
            Setup = setup,
            Trials = TrialPlan.Of(recording, TrialSources.Choose(recording, setup, null, RecordingCompanions.None), setup).Trials,
            TrialsFrom = "annotations",
            WithSensitivity = isCounted,
        },
        CancellationToken.None);

    private static (GradeCounts Trials, GradeCounts Channels) Counted(RecordingResult result) => (
        result.Channels.SelectMany(channel => channel.Cells).Aggregate(default(GradeCounts), (counts, cell) => counts.Plus(cell.Verdict)),
        result.Channels.Aggregate(default(GradeCounts), (counts, channel) => counts.Plus(channel.Verdict)));

    // A reason that is not listed changes nothing at any factor.
    private static (GradeCounts Trials, GradeCounts Channels) Counts(ImmutableArray<MovedLimits> rows, string reason, double factor)
    {
        MovedLimits row = rows.FirstOrDefault(one => one.Factor.Equals(factor) && string.Equals(one.Reason, reason, StringComparison.Ordinal)) ?? rows[0];
        return (row.Trials, row.Channels);
    }
}
