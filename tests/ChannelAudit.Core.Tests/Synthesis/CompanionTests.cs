using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>The files that go with a recording, letter by letter.</summary>
public sealed class CompanionTests
{
    private static readonly SessionPlan Plan = new()
    {
        Seed = 1,
        DurationS = 20,
        Sites = [SitePlan.Face[0], new SitePlan { Name = "say \"a\\b\"", Label = "EMG 2" }],
        Trials =
        [
            new PlannedTrial { OnsetS = 1.5M, DurationS = 4, Label = "rest", Role = TrialRole.Rest },
            new PlannedTrial { OnsetS = 8, DurationS = 3.25M, Label = "harbour" },
            new PlannedTrial { OnsetS = 12, DurationS = 4, Label = "rest", Role = TrialRole.Rest },
        ],
    };

    [Fact]
    public void TheEventsTableListsTheTrials() => Assert.Equal(
        "onset\tduration\ttrial_type\n1.5\t4\trest\n8\t3.25\tharbour\n12\t4\trest\n", EventsTable.Of(Plan));

    [Fact]
    public void TheSetupNamesSitesAndTrials() => Assert.Equal(
        """
        [recording]
        amplifier_noise_uv = 0.45

        [[sites]]
        name = "cheek"
        muscle = "zygomaticus major"
        channel = "EMG cheek"
        adjacent = ["eye"]
        task = "raise lip corner"

        [[sites]]
        name = "say \"a\\b\""
        channel = "EMG 2"

        [trials]
        from = "events"
        rest = ["rest"]

        """.ReplaceLineEndings("\n"),
        SetupText.Of(Plan, "events"));
}
