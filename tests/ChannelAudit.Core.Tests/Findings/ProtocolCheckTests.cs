using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Sessions;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Findings;

/// <summary>Invented sessions against an invented protocol: a trial of 3 s every 8 s, angry and happy in turn.</summary>
public sealed class ProtocolCheckTests
{
    private const string Protocol = "[trials]\nrest = [\"rest\"]\n[protocol]\ntrials = { angry = 4, happy = 4 }\nduration_s = [2.9, 3.1]\norder = [\"angry\", \"happy\"]\ngap_s = [4, 12]\n";

    [Fact]
    public void ASessionThatFollowsItSaysNothing() => Assert.Empty(Check(Protocol, Session()));

    [Fact]
    public void RestAndAPauseBetweenBlocksSayNothing() => Assert.Empty(Check(Protocol, [(0, 3, "rest"), .. Session()[..4], (42, 20, "rest"), .. Session()[4..].Select(one => (one.OnsetS + 30, one.DurationS, one.Label))]));

    [Fact]
    public void AMissingTrialIsNamedWithItsPlace()
    {
        Finding found = Assert.Single(Check(Protocol, [.. Session()[..2], .. Session()[3..]]));

        Assert.Equal(
            "missing: 1 of 4 'angry', after trial 2 'happy' at 18.0 s; the place may be the pause before trial 3 'happy' at 34.0 s, which comes 16.0 s after trial 2, later than 12.0 s",
            found.Text);
        Assert.Equal(("events", Grade.Pass, 18.0, 34.0), (found.Reason, found.Grade, found.FromS, found.ToS));
        Assert.Equal("cheek,brow", string.Join(',', found.Channels));
    }

    [Fact]
    public void WithoutAnOrderOnlyTheNumberIsKnown()
    {
        const string any = "[protocol]\ntrials = { angry = 4, happy = 4 }\n";

        Assert.Equal(
            ["missing: 1 of 4 'angry'", "surplus: 5 trials of 'happy', 4 expected; trial 9 'hapy' at 74.0 s is no condition of the protocol"],
            Texts(Check(any, [.. Session()[..2], .. Session()[3..], (66, 3, "happy"), (74, 3, "hapy")])));
    }

    [Fact]
    public void AmongEqualLabelsNobodyKnowsWhich()
    {
        const string blocked = "[protocol]\ntrials = { angry = 4, happy = 4 }\norder = \"as-listed\"\n";
        (decimal OnsetS, decimal DurationS, string Label)[] session = [.. Session().Select((one, i) => (one.OnsetS, one.DurationS, i < 3 ? "angry" : "happy"))];

        Assert.Equal(["missing: 1 of 4 'angry', somewhere among trials 1 to 3", "surplus: trial 8 'happy' at 66.0 s has no place in the order"], Texts(Check(blocked, session)));
    }

    [Fact]
    public void ADoubleCountsNoFurther()
    {
        Finding found = Assert.Single(Check(Protocol, [.. Session()[..3], (26.5m, 3, "angry"), .. Session()[3..]]));

        Assert.Equal("double: trial 4 'angry' at 26.5 s comes 0.5 s after trial 3, sooner than 4.0 s", found.Text);
        Assert.Equal(4, found.Trial);
    }

    [Fact]
    public void ATriggerThatBouncedIsSaidWithoutAnyProtocol()
    {
        AuditInput input = Input("[trials]\nfrom = \"trigger\"\ntrigger_least_ms = 50\n", Session()) with { Doubles = [new RecordedEvent(26.012m, 0, "angry")] };

        Assert.Equal(["double: a trigger 'angry' at 26.012 s, 12 ms after trial 3 'angry' at 26.0 s, no trial of its own"], Texts(ProtocolCheck.Of(input, ["cheek"], 70)));
    }

    [Fact]
    public void TrialsOutOfOrderTooShortTooLateOrBeyondTheEndAreMisplaced()
    {
        (decimal OnsetS, decimal DurationS, string Label)[] session = Session();
        (session[2].Label, session[3].Label) = (session[3].Label, session[2].Label);
        session[5].DurationS = 1.5m;
        session[7].OnsetS += 9;

        Assert.Equal(
            ["misplaced: trial 3 'happy' at 26.0 s is out of order: 'angry' expected here; trial 4 'angry' at 34.0 s is out of order: 'happy' expected here; trial 8 'happy' at 75.0 s comes 17.0 s after trial 7, later than 12.0 s; "
                + "trial 6 'happy' at 50.0 s lasts 1.5 s, not 2.9 s to 3.1 s; trial 8 'happy' at 75.0 s reaches beyond the recording"],
            Texts(Check(Protocol, session)));
    }

    [Fact]
    public void ATrialMovedFarIsNamedWithThePlaceItShouldHave() => Assert.Equal(
        ["misplaced: trial 6 'b' at 60.0 s is out of order: expected after trial 1 'a' at 10.0 s"],
        Texts(Check("[protocol]\norder = [\"a\", \"b\", \"c\", \"d\", \"e\", \"f\"]\n", [.. "acdefb".Select((label, i) => (10m * (i + 1), 3m, label.ToString()))])));

    [Fact]
    public void ALongListIsCut()
    {
        Finding found = Assert.Single(Check("[protocol]\nduration_s = [4, 5]\n", Session()));

        Assert.EndsWith("; and 2 more", found.Text, StringComparison.Ordinal);
        Assert.Null(found.Trial);
    }

    [Fact]
    public void WhatCannotBeCheckedIsSaid()
    {
        Assert.Equal(["misplaced: durations could not be checked: the events are instants"], Texts(Check("[trials]\nwindow = [0, 3]\n[protocol]\nduration_s = [2, 3]\n", [.. Session().Select(one => (one.OnsetS, 0m, one.Label))])));
        Assert.Equal(
            ["missing: the recording has no events, so that its trials are blocks of time and the protocol could not be checked"],
            Texts(ProtocolCheck.Of(Input(Protocol, Session()) with { TrialsFrom = "blocks" }, ["cheek"], 70)));
    }

    [Fact]
    public void AlignmentKeepsAsManyAsAgree()
    {
        TrialAlignment along = TrialAlignment.Of(["a", "b", "c", "d", "e"], ["a", "c", "x", "b", "e"]);

        Assert.Equal(3, along.FoundOf.Count(found => found >= 0));
        Assert.Equal([0, 4], new[] { along.FoundOf[0], along.FoundOf[4] });
        Assert.Equal(2, along.Extra.Length);
    }

    private static (decimal OnsetS, decimal DurationS, string Label)[] Session() => [.. Enumerable.Range(0, 8).Select(i => (10m + (8 * i), 3m, i % 2 == 0 ? "angry" : "happy"))];

    private static ImmutableArray<Finding> Check(string setup, (decimal OnsetS, decimal DurationS, string Label)[] session) => ProtocolCheck.Of(Input(setup, session), ["cheek", "brow"], session[^1].OnsetS > 70 && session.Length == 8 ? 76 : 200);

    private static AuditInput Input(string toml, (decimal OnsetS, decimal DurationS, string Label)[] session)
    {
        StudySetup setup = SetupFile.Parse(toml, "setup.toml");
        return new AuditInput
        {
            Id = "made",
            Path = "made",
            Sha256 = string.Empty,
            Criteria = DefaultCriteria.All,
            Setup = setup,
            TrialsFrom = "events",
            Trials =
            [
                .. session.Select((one, i) => new Trial
                {
                    Number = i + 1,
                    Label = one.Label,
                    Role = setup.Trials.Rest.Contains(one.Label, StringComparer.Ordinal) ? TrialRole.Rest : TrialRole.Scored,
                    OnsetS = one.OnsetS,
                    DurationS = one.DurationS,
                    WindowFromS = one.OnsetS,
                    WindowToS = one.OnsetS + (setup.Trials.WindowToS ?? one.DurationS),
                }),
            ],
        };
    }

    private static string[] Texts(ImmutableArray<Finding> found) => [.. found.Select(one => one.Text)];
}
