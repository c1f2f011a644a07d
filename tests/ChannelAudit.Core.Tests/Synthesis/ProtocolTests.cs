using System.Collections.Immutable;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

public sealed class ProtocolTests
{
    [Fact]
    public void ASessionRestsContractsEachMuscleScoresAndRests()
    {
        ImmutableArray<PlannedTrial> trials = new Protocol { ScoredTrials = 4 }.Plan(1).Trials;

        Assert.Equal(
            "rest, raise lip corner, draw brows together, close eyes firmly, harbour, meadow, harbour, meadow, rest",
            string.Join(", ", trials.Select(trial => trial.Label)));
        Assert.Equal(3, trials.Count(trial => trial.Role == TrialRole.Task));
        Assert.All(trials.Zip(trials.Skip(1)), pair => Assert.Equal(pair.First.EndS + 4, pair.Second.OnsetS));
    }

    [Fact]
    public void TheMuscleComesAndGoesOutsideItsTrial()
    {
        SessionPlan plan = new()
        {
            Seed = 1,
            DurationS = 10,
            Trials =
            [
                new PlannedTrial { OnsetS = 2, DurationS = 2, Label = "harbour", Activity = [new SiteActivity("cheek", 11.5)] },
                new PlannedTrial { OnsetS = 4, DurationS = 2, Label = "meadow" },
            ],
        };
        double[] levels = new double[plan.Length];

        MuscleLevels.Fill(plan, 0, levels);

        Assert.Equal(1.5, levels[3879], 1e-9);
        Assert.Equal(6.5, levels[3940], 1e-9);
        Assert.All(levels[4000..8000], level => Assert.Equal(11.5, level));
        Assert.All(levels[8000..], level => Assert.Equal(1.5, level));
    }
}
