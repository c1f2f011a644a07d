using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Which electrodes a bridge is said to join. Truth: the joints of the plan; the signs follow from the resistor network (docs/measures/bridge.md).</summary>
public sealed class LikelyJointTests
{
    [Theory]
    [InlineData(901, true, false, "the sign fits C2-E1 or C1-E2;")]
    [InlineData(902, false, true, "the sign fits C2-E1 or C1-E2;")]
    [InlineData(903, false, false, "the sign fits C1-E1 or C2-E2 (a remote source has this sign too);")]
    [InlineData(904, true, true, "the sign fits C1-E1 or C2-E2 (a remote source has this sign too);")]
    public void TheSignOfOneJointNamesTheElectrodesThatFit(ulong seed, bool secondOfCheek, bool secondOfEye, string words)
    {
        RecordingResult result = Audited(seed, Joint(secondOfCheek, secondOfEye));

        Finding finding = BridgeOf(result);
        Assert.Equal(Grade.Questionable, finding.Grade);
        Assert.Contains(words, finding.Text, StringComparison.Ordinal);
        Assert.Contains("the sizes fit one joint, or two behind more gel", finding.Text, StringComparison.Ordinal);
        Assert.Contains("a reading across the sites", finding.Cause, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(911, false, "the sign fits C1-E1 and C2-E2 (a remote source has this sign too); the sizes fit two joints")]
    [InlineData(912, true, "the sign fits C2-E1 and C1-E2; the sizes fit two joints")]
    public void TwoJointsAreToldFromOneBySize(ulong seed, bool crossed, string words)
    {
        RecordingResult result = Audited(seed, Joint(false, crossed), Joint(true, !crossed));

        Finding finding = BridgeOf(result);
        Assert.Equal(Grade.Reject, finding.Grade);
        Assert.EndsWith(words, finding.Text, StringComparison.Ordinal);
        PairResult pair = result.Pairs.Single(one => one.Evidence.Electrodes is not null);
        Assert.Equal(words, pair.Evidence.Electrodes);
        Assert.EndsWith(words[1..] + ".", pair.Evidence.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutIdsElectrodesAreFirstAndSecond()
    {
        SessionPlan plan = Plan(921, Joint(true, false));

        RecordingResult result = MadeAudit.Of(plan);

        Assert.Contains(
            "the sign fits the second electrode of cheek with the first of eye or the first electrode of cheek with the second of eye;",
            BridgeOf(result).Text,
            StringComparison.Ordinal);
    }

    /// <summary>A remote source in the rests only turns the sign there.</summary>
    [Fact]
    public void SignsThatDisagreeAreSaidToTellNothing()
    {
        SessionPlan plan = Plan(931, Joint(true, false));
        Fault[] remote =
        [
            .. plan.Trials.Where(trial => trial.Role == Segments.TrialRole.Rest).Select(trial =>
                new CommonSource(3, [new RemoteShare("cheek", 0.5, 0), new RemoteShare("eye", -0.5, 0)]) { Span = FaultSpan.Of(trial) }),
        ];

        RecordingResult result = MadeAudit.Of(plan with { Faults = [.. plan.Faults, .. remote] });

        Assert.Contains("do not tell which electrodes are joined", BridgeOf(result).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void ASiteBesideTheGroundNamesGelToItWhereMainsStand()
    {
        SessionPlan plan = MadeAudit.Session(941, new Rational(1000, 1), 2) with { Faults = [new MainsPickup(MadeAudit.Sites, 8), new Motion(MadeAudit.Sites, 60)] };
        using Recording recording = MadeRecording.Make(plan).Open();

        RecordingResult result = MadeAudit.Of(recording, WithIds(MadeAudit.SetupOf(plan)));

        foreach (string reason in new[] { ReasonCode.LineNoise, ReasonCode.LowFrequency })
        {
            Assert.Equal([false, true, false], result.Channels.Select(channel => channel.Cells.SelectMany(cell => cell.Findings)
                .First(finding => string.Equals(finding.Reason, reason, StringComparison.Ordinal))
                .Cause.Contains("to the ground", StringComparison.Ordinal)));
        }

        Assert.All(result.Channels, channel => Assert.DoesNotContain(channel.NotAssessed, open => open.Cause.Contains("ground", StringComparison.Ordinal)));
    }

    private static ElectrodeJoint Joint(bool secondOfCheek, bool secondOfEye) => new(new Electrode("cheek", secondOfCheek), new Electrode("eye", secondOfEye), 0.1);

    /// <summary>Contacts of like impedance that make 1 µV of noise each, so that a joint shows at rest.</summary>
    private static SessionPlan Plan(ulong seed, params ElectrodeJoint[] joints)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1), 2, 20);
        return plan with
        {
            Sites = [.. plan.Sites.Select(site => site with { ElectrodeNoiseUv = 1, FirstKohm = 5, SecondKohm = 5 })],
            Faults = [new ElectrodeBridge([.. joints])],
        };
    }

    private static RecordingResult Audited(ulong seed, params ElectrodeJoint[] joints)
    {
        SessionPlan plan = Plan(seed, joints);
        using Recording recording = MadeRecording.Make(plan).Open();
        return MadeAudit.Of(recording, WithIds(MadeAudit.SetupOf(plan)));
    }

    private static StudySetup WithIds(StudySetup setup) => setup with
    {
        Sites =
        [
            .. setup.Sites.Select(site => site with
            {
                Electrodes = [char.ToUpperInvariant(site.Name[0]) + "1", char.ToUpperInvariant(site.Name[0]) + "2"],
                Adjacent = string.Equals(site.Name, "brow", StringComparison.Ordinal) ? [SiteSetup.Ground] : site.Adjacent,
            }),
        ],
    };

    private static Finding BridgeOf(RecordingResult result) =>
        MadeAudit.Channel(result, "cheek").Findings.Single(finding => string.Equals(finding.Reason, ReasonCode.Bridge, StringComparison.Ordinal) && finding.Channels.Length == 2);
}
