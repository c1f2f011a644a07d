using System.Collections.Immutable;
using ChannelAudit.Core.Tests.Acceptance;
using ChannelAudit.Excerpts;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Excerpts;

/// <summary>What a window's own samples give is what the audit of the whole recording gave, to the last bit.</summary>
public sealed class ExcerptMeasuresTests
{
    [Theory]
    [InlineData(0, false, false)]
    [InlineData(1, true, false)]
    [InlineData(3, true, true)]
    public void EveryMeasureOfTheWindowAloneIsTheSameNumber(int rate, bool hasBaseline, bool isShortAndFiltered)
    {
        SessionPlan plan = MadeAudit.WithConfusersAndMotion(MadeAudit.Session(7, MadeAudit.Rates[rate], scored: 4), new MainsPickup(["brow"], 6));
        StudySetup setup = MadeAudit.SetupOf(plan);
        TrialSetup trials = setup.Trials with { BaselineS = hasBaseline ? 0.75m : null };
        setup = isShortAndFiltered
            ? setup with { Trials = trials with { WindowFromS = 0.1m, WindowToS = 0.9m }, Scoring = new ScoringSetup { HighpassHz = 30, NotchesHz = [50] } }
            : setup with { Trials = trials };
        using Recording recording = MadeRecording.Make(plan).Open();
        RecordingResult whole = MadeAudit.Of(recording, setup);
        RecordingFrames frames = RecordingFrames.Of(recording, AuditedChannels.Of(recording, setup), setup, CancellationToken.None);

        int compared = 0;
        foreach (Trial trial in whole.Trials)
        {
            (ChannelFacts Facts, Excerpt Excerpt)[] parts = [.. frames.Channels.Select((channel, i) => (
                ChannelFacts.Of(channel.Channel, channel.Name, frames.Frames[i], setup.Scoring), Excerpt.Of(recording, channel.Channel, (trial.BaselineFromS ?? trial.WindowFromS) - 0.5m, trial.WindowToS + 0.5m)))];
            for (int channel = 0; channel < parts.Length; channel++)
            {
                CellResult cell = whole.Channels[channel].Cells.Single(one => one.Trial == trial.Number);
                compared += Compare(cell.Measures, ExcerptMeasures.Of(parts[channel].Facts, parts[channel].Excerpt, trial.WindowFromS, trial.WindowToS, CancellationToken.None));
                compared += trial.BaselineFromS is { } from
                    ? Compare(cell.BaselineMeasures, ExcerptMeasures.Of(parts[channel].Facts, parts[channel].Excerpt, from, trial.OnsetS, CancellationToken.None))
                    : 0;
            }

            compared += Pair(whole.Pairs[0], trial, parts);
        }

        Assert.InRange(compared, 200, int.MaxValue);
    }

    [Fact]
    public void OneChangedSampleChangesTheNumbers()
    {
        ChannelFacts facts = new() { Name = "cheek", Rate = new Rational(1000, 1), IsMicrovolts = true, NominalHz = 50, LineHz = 50 };
        double[] samples = [.. Enumerable.Range(0, 2000).Select(i => (double)(i * 7919 % 1009))];
        ImmutableArray<MeasureValue> before = ExcerptMeasures.Of(facts, new Excerpt([(0, 2000)], samples), 0, 2, CancellationToken.None);
        samples[1234] += 1e-6;
        ImmutableArray<MeasureValue> after = ExcerptMeasures.Of(facts, new Excerpt([(0, 2000)], samples), 0, 2, CancellationToken.None);

        Assert.NotEqual(Value(before, "emg_rms"), Value(after, "emg_rms"));
        Assert.Equal(Value(before, "missing"), Value(after, "missing"));
        Assert.DoesNotContain(before, value => value.Measure is "clipped" or "pops" or "headroom" or "flat" or "contraction_snr");
    }

    [Theory]
    [InlineData(true, 0, 3, 10, 2)]
    [InlineData(false, 0, 3, 2, 2)]
    [InlineData(false, 0, 4, 10, 2)]
    [InlineData(false, 0, 0, 10, 5)]
    [InlineData(false, long.MaxValue, 3, 10, 2)]
    public void PiecesMustFitTheSamples(bool fits, long start, long length, long secondStart, long secondLength) =>
        Assert.Equal(fits, new Excerpt([(start, length), (secondStart, secondLength)], new double[5]).IsConsistent);

    private static double? Value(ImmutableArray<MeasureValue> values, string measure) => values.Single(value => string.Equals(value.Measure, measure, StringComparison.Ordinal)).Value;

    private static int Compare(ImmutableArray<GradedMeasure> whole, ImmutableArray<MeasureValue> part)
    {
        (string, double?)[] expected = [.. whole.Select(measure => measure.Value).Where(value => ExcerptMeasures.IsOfWindowAlone(value.Measure)).Select(value => (value.Measure, value.Value))];
        Assert.Equal(expected, part.Select(value => (value.Measure, value.Value)));
        return expected.Count(value => value.Item2 is not null);
    }

    private static int Pair(PairResult pair, Trial trial, (ChannelFacts Facts, Excerpt Excerpt)[] parts)
    {
        PairRow row = pair.Rows.FirstOrDefault(one => string.Equals(one.Trial, trial.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal));
        if (row.Rho is null)
        {
            return 0;
        }

        PairReading now = ExcerptMeasures.OfPair(parts[0], parts[1], trial.WindowFromS, trial.WindowToS, CancellationToken.None)!.Value;
        Assert.Equal((row.Rho, row.RhoHigh, row.Distance, row.Coherence, row.GainAb, row.GainBa), ((double?)now.Rho, now.RhoHigh, (double?)now.Distance, now.Coherence, (double?)now.GainAb, (double?)now.GainBa));
        return 6;
    }
}
