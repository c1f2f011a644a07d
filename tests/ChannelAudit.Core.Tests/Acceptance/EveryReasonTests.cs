using System.Collections.Frozen;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Every code is provoked by a made recording, and none by a clean one. A code without a recording here fails, so that none is ever only a name.</summary>
public sealed class EveryReasonTests
{
    private static readonly FrozenDictionary<string, Func<RecordingResult>> Provoking = new Dictionary<string, Func<RecordingResult>>(StringComparer.Ordinal)
    {
        [ReasonCode.Bridge] = () => With(ElectrodeBridge.TwoNodes("cheek", "eye", 0.1)),
        [ReasonCode.Dropout] = () => With(new RecordingGap { Span = new FaultSpan(Plan().Trials[5].OnsetS + 1, Plan().Trials[5].OnsetS + 2) }),
        [ReasonCode.Flatline] = () => With(new Flatline("brow") { Span = new FaultSpan(50, 56) }),
        [ReasonCode.Clipping] = () => With(new HiddenRail("cheek", 50)),
        [ReasonCode.LineNoise] = () => With(new MainsPickup(["eye"], 8)),
        [ReasonCode.NarrowBand] = () => With(new NarrowPeak(["eye"], 6, 85)),
        [ReasonCode.LowFrequency] = () => With(new Motion(["cheek"], 60)),
        [ReasonCode.Pops] = () => With(new ElectrodePops("brow", 150, 12)),
        [ReasonCode.NoiseFloor] = () => With(new BroadbandNoise(["brow"], 8)),
        [ReasonCode.Drift] = () => With(new Drift("brow", 2000)),
        [ReasonCode.WeakResponse] = () => With(ElectrodeBridge.WithinPair("brow", 0.1)),
        [ReasonCode.LeadSwap] = () => MadeAudit.Of(Plan() with { Trials = [.. Plan().Trials.Select(trial => trial with { Activity = [.. trial.Activity.Select(Exchange)] })] }),
        [ReasonCode.UnusableInput] = () => MadeAudit.Of(Plan() with { Amplifier = new AmplifierPlan { StepUv = 5 } }),
        [ReasonCode.Crosstalk] = () => With(new Crosstalk("cheek", "eye", 0.2), new Crosstalk("eye", "cheek", 0.2)),
        [ReasonCode.CommonSource] = () => With(new CommonSource(8, [new RemoteShare("cheek", 0.5, 0.4), new RemoteShare("brow", 0.5, 0.4), new RemoteShare("eye", 0.5, 0.4)])),
        [ReasonCode.TonicActivity] = () => MadeAudit.Of(Plan() with { Sites = [.. SitePlan.Face.Select(site => site with { RestUv = 6 })] }),
        [ReasonCode.MouthActivity] = () => With(new MouthActivity("cheek", 25, 1.5) { Span = new FaultSpan(40, 60) }),
        [ReasonCode.FilterMismatch] = () => Stating(new Prefilter(20, null, [], string.Empty)),
        [ReasonCode.Events] = () => MadeAudit.Of(Plan() with { Trials = [.. Plan().Trials, Plan().Trials[^1]] }),
        [ReasonCode.RestingLevel] = () => With(new LevelTrend("brow", 20)),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static TheoryData<string> Codes => [.. ReasonCode.All, .. ReasonCode.Information];

    /// <summary>Rate, mains (0: none), high-pass (0: coupled to DC).</summary>
    public static TheoryData<ulong, int, double, double> Clean => new()
    {
        { 1301, 1000, 50, 0 },
        { 1302, 2000, 60, 0 },
        { 1303, 2048, 0, 0 },
        { 1304, 1000, 60, 10 },
        { 1305, 2000, 0, 10 },
        { 1306, 2048, 50, 10 },
        { 1307, 1000, 0, 0 },
        { 1308, 2000, 50, 10 },
    };

    [Theory]
    [MemberData(nameof(Codes))]
    public void EveryCodeIsProvokedByARecording(string code)
    {
        Assert.True(Provoking.ContainsKey(code), $"no recording provokes {code}");
        RecordingResult result = Provoking[code]();

        if (ReasonCode.All.Contains(code, StringComparer.Ordinal))
        {
            Assert.Contains(result.Channels, channel => channel.Reasons.Contains(code, StringComparer.Ordinal) || channel.Cells.Any(cell => cell.Reasons.Contains(code, StringComparer.Ordinal)));
        }
        else
        {
            Assert.Contains(code, result.Information.Select(finding => finding.Reason), StringComparer.Ordinal);
        }
    }

    [Fact]
    public void EveryFindingSaysWhatWasSeenAndWhatTheLikelyCauseIs() => Assert.All(
        Provoking.Values.Select(provoke => provoke()).SelectMany(result => result.Information
            .Concat(result.Channels.SelectMany(channel => channel.Findings.Concat(channel.Cells.SelectMany(cell => cell.Findings))))),
        finding => Assert.True(finding.Text.Length > 0 && finding.Cause.Length > 0 && finding.ToS > finding.FromS, finding.Reason));

    [Theory]
    [MemberData(nameof(Clean))]
    public void ACleanSessionProvokesNone(ulong seed, int rateHz, double mainsHz, double highpassHz)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(rateHz, 1));
        Fault[] room = mainsHz > 0 ? [new MainsPickup(MadeAudit.Sites, 0.3, mainsHz)] : [];

        RecordingResult result = MadeAudit.Of(plan with { Faults = [.. room, new Drift("cheek", 50)], Amplifier = plan.Amplifier with { HighpassHz = highpassHz } });

        Assert.True(MadeAudit.Blemishes(result).Length == 0, MadeAudit.Blemishes(result));
        Assert.Empty(result.Information.Select(finding => finding.Reason + ": " + finding.Text));
    }

    private static SessionPlan Plan() => MadeAudit.Session(1311, new Rational(1000, 1));

    private static RecordingResult With(params Fault[] faults) => MadeAudit.Of(Plan() with { Faults = [.. faults] });

    private static RecordingResult Stating(Prefilter stated)
    {
        using Recording made = MadeRecording.Make(Plan()).Open();
        using Recording recording = Altered.Stating(made, stated);
        return MadeAudit.Of(recording, Plan());
    }

    private static SiteActivity Exchange(SiteActivity one) => one.Site switch
    {
        "cheek" => one with { Site = "brow" },
        "brow" => one with { Site = "cheek" },
        _ => one,
    };
}
