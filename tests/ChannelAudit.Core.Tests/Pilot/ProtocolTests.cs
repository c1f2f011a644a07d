using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Pilot;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>The protocol that is printed is one that answers everything when it is read.</summary>
public sealed class ProtocolTests
{
    [Fact]
    public void ItTakesUnderAMinuteForUpToFiveSites()
    {
        ImmutableArray<SiteSetup> sites = [.. Enumerable.Range(1, 5).Select(i => new SiteSetup { Name = $"s{i.ToString(CultureInfo.InvariantCulture)}", Channel = "c", Task = "t" })];
        Assert.InRange(PilotProtocol.Of(new StudySetup { Sites = sites }).DurationS, 30, 59);
    }

    [Fact]
    public void ThereAreThreeSecondsToShowEachMovement()
    {
        ImmutableArray<ProtocolPart> parts = PilotProtocol.Of(SetupFile.Parse(SetupText.Of(PilotCase.Recorded(1)), "setup.toml")).Parts;
        Assert.All(parts.Zip(parts.Skip(1)).Where(pair => pair.Second.Kind == ProtocolPartKind.Task), pair => Assert.Equal(3, pair.Second.AtS - pair.First.AtS - pair.First.ForS));
        Assert.All(parts.Where(part => part.Kind == ProtocolPartKind.Task), part => Assert.Equal((3, 4), (part.LeadS, part.ForS)));
    }

    [Fact]
    public void PartsFollowEachOtherWithoutOverlap()
    {
        ImmutableArray<ProtocolPart> parts = PilotProtocol.Of(SetupFile.Parse(SetupText.Of(PilotCase.Recorded(1)), "setup.toml")).Parts;
        Assert.Equal(["rest", "raise lip corner", "draw brows together", "close eyes firmly", "tap cheek", "tap brow", "tap eye"], parts.Select(part => part.Label).ToArray());
        Assert.All(parts.Zip(parts.Skip(1)), pair => Assert.True(pair.First.AtS + pair.First.ForS < pair.Second.AtS));
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(1, true)]
    [InlineData(2, true)]
    public void RecordedAsPrintedNothingStaysOpen(int seed, bool isJoined)
    {
        SessionPlan face = PilotCase.Recorded((ulong)seed);
        PilotProtocol protocol = PilotProtocol.Of(SetupFile.Parse(SetupText.Of(face), "setup.toml"));
        List<Fault> faults = isJoined ? [ElectrodeBridge.OneNode("cheek", "eye", 1)] : [new Crosstalk("eye", "cheek", 0.2)];
        faults.AddRange(protocol.Parts.Where(part => part.Kind == ProtocolPartKind.Taps).SelectMany(Taps));
        SessionPlan plan = face with { DurationS = protocol.DurationS + 1, Trials = [.. protocol.Parts.Select(Trial)], Faults = [.. faults] };

        PilotReport report = new PilotCase { Plan = plan, AsWrittenDown = face }.Run();

        Assert.Empty(report.NotChecked);
        Assert.Equal(isJoined ? PilotAnswer.NotYet : PilotAnswer.Start, report.Answer);
        Assert.Equal(isJoined ? [StepKind.Wipe] : [], report.Next.Select(step => step.Kind).ToArray());
    }

    private static IEnumerable<Fault> Taps(ProtocolPart part) =>
    [
        new LeadTaps(Electrode.First(part.Site!), 300) { Span = new FaultSpan(part.AtS, part.AtS + 2) },
        new LeadTaps(Electrode.Second(part.Site!), 300) { Span = new FaultSpan(part.AtS + 2, part.AtS + 4) },
    ];

    private static PlannedTrial Trial(ProtocolPart part) => new()
    {
        OnsetS = part.AtS,
        DurationS = part.ForS,
        Label = part.Label,
        Role = part.Kind switch { ProtocolPartKind.Rest => TrialRole.Rest, ProtocolPartKind.Task => TrialRole.Task, _ => TrialRole.Scored },
        Activity = part.Kind == ProtocolPartKind.Task ? [new SiteActivity(part.Site!, 20)] : [],
    };
}
