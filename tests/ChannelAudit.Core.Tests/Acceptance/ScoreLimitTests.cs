using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;
using static ChannelAudit.Core.Tests.Acceptance.ScoredCells;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Limits on what a fault does to the score.</summary>
public sealed class ScoreLimitTests
{
    [Fact]
    public void LimitsMayBeSetInPercentOfTheScore()
    {
        SessionPlan plan = MadeAudit.Session(908) with { Faults = [new MainsPickup(["cheek"], 3) { Harmonics = [1] }] };
        const string Lab = "[line-noise]\nquestionable = [{ line_effect = 10.0 }]\nreject = [{ line_effect = 60.0 }]\n";

        RecordingResult result = MadeAudit.Of(plan, "\n[scoring]\nhighpass_hz = 20.0\n", Lab);

        // At rest of 1.5 µV or so the mains is most of the score; in the contraction of 25 µV it is next to nothing.
        Assert.Contains(1, MadeAudit.RejectedFor(result, "cheek", "line-noise"));
        int task = result.Trials.First(trial => string.Equals(trial.Label, "raise lip corner", StringComparison.Ordinal)).Number;
        Assert.DoesNotContain(task, MadeAudit.FoundFor(result, "cheek", "line-noise"));
        Finding found = Found(result, "cheek", 1, "line-noise");
        Assert.Equal("line_effect", Assert.Single(found.Evidence).Measure);
        Assert.Equal(found.Evidence[0].Value, found.Effect!.Percent);
        GradedMeasure row = Measure(result, "cheek", 1, "line_effect");
        Assert.Equal((Grade.Reject, 10, 60), (row.Grade, row.Questionable, row.Reject));
    }

    /// <summary>3 µV of mains shifts a quiet amplitude by more than 1 µV and a contraction of 25 µV by a quarter of that, give or take what its own spectrum has there.</summary>
    [Fact]
    public void LimitsMayBeSetInMicrovoltsOfTheScore()
    {
        SessionPlan plan = MadeAudit.Session(908) with { Faults = [new MainsPickup(["cheek"], 3) { Harmonics = [1] }] };
        const string Lab = "[line-noise]\nquestionable = [{ line_shift = 0.7 }]\nreject = [{ line_shift = 1.0 }]\n";

        RecordingResult result = MadeAudit.Of(plan, "\n[scoring]\nhighpass_hz = 20.0\n", Lab);

        int task = result.Trials.First(trial => string.Equals(trial.Label, "raise lip corner", StringComparison.Ordinal)).Number;
        Assert.Contains(1, MadeAudit.RejectedFor(result, "cheek", "line-noise"));
        Assert.DoesNotContain(task, MadeAudit.FoundFor(result, "cheek", "line-noise"));
        Finding found = Found(result, "cheek", 1, "line-noise");
        Assert.Equal("line_shift", Assert.Single(found.Evidence).Measure);
        Assert.Equal(found.Evidence[0].Value, found.Effect!.Microvolts!.Value, 1e-12);
        GradedMeasure row = Measure(result, "cheek", 1, "line_shift");
        Assert.Equal((Grade.Reject, 0.7, 1.0), (row.Grade, row.Questionable, row.Reject));
    }

    /// <summary>Every fault's shift in µV is its percentage of what is left without it.</summary>
    [Fact]
    public void BothUnitsSayTheSame()
    {
        SessionPlan plan = MadeAudit.Session(915);
        plan = plan with { Faults = [new ElectrodePops("cheek", 400, 4) { Span = FaultSpan.Of(plan.Trials[5]) }, new MainsPickup(["brow"], 2)] };

        RecordingResult result = MadeAudit.Of(plan);

        foreach (CellResult cell in result.Channels.SelectMany(channel => channel.Cells))
        {
            double rectified = Value(cell, "rectified");
            foreach (string fault in new[] { "line", "narrow", "lowfreq", "noise", "pops", "clipped", "flat" })
            {
                double without = rectified - Value(cell, fault + "_shift");
                Assert.Equal(Value(cell, fault + "_effect"), 100 * ((rectified / without) - 1), 1e-6);
            }
        }
    }

    private static double Value(CellResult cell, string measure) =>
        cell.Measures.Single(one => string.Equals(one.Value.Measure, measure, StringComparison.Ordinal)).Value.Value!.Value;
}
