using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>What is written and read again is what was made.</summary>
public sealed class EdfFilesTests
{
    private static readonly SessionPlan Plan = new()
    {
        Seed = 1,
        DurationS = 6,
        Trials = [new PlannedTrial { OnsetS = 1.25M, DurationS = 2.5M, Label = "meadow" }],
    };

    [Fact]
    public void AContinuousFileHoldsEveryCode() => SameAfterwards(Plan, "EDF+C");

    [Fact]
    public void AConverterWithNarrowRailsKeepsThem() => SameAfterwards(Plan with { Faults = [new HeaderRail("eye", 3.5)] }, "EDF+C");

    [Fact]
    public void AFileWithAGapHoldsTheStretches() => SameAfterwards(
        Plan with { Faults = [new RecordingGap { Span = new FaultSpan(2, 3.3M) }] }, "EDF+D");

    [Fact]
    public void TwentyFourBitsHoldFineSteps() => SameAfterwards(
        Plan with { Amplifier = new AmplifierPlan { Bits = 24, StepUv = 0.001 } }, "BDF+C");

    [Fact]
    public void AnOddRateIsKept() => SameAfterwards(Plan with { Rate = new Rational(4974, 10), DurationS = 10 }, "EDF+C");

    [Fact]
    public void TheSamePlanGivesTheSameBytes()
    {
        Assert.Equal(Bytes(Plan), Bytes(Plan));
        Assert.NotEqual(Bytes(Plan), Bytes(Plan with { Seed = 2 }));
    }

    [Fact]
    public void AChannelThatMissesSamplesIsLeftToText() => Assert.Throws<ArgumentException>(
        () => Bytes(Plan with { Faults = [new MissingSamples("eye") { Span = new FaultSpan(1, 2) }] }));

    [Fact]
    public void ALongRecordingHasItsTrialsAndItsLevels()
    {
        SessionPlan plan = BenchmarkSession.Plan with { DurationS = 80, Trials = BenchmarkSession.Plan.Trials[..8] };
        string path = Path.GetTempFileName();
        try
        {
            LongRecording.Write(plan, path);
            using Recording recording = EdfReader.Open(path, new ReadOptions());
            double[] cheek = new double[160_000];
            recording.Samples.Read(0, 0, cheek);

            Assert.Equal(4, recording.Channels.Count(channel => channel.NotAudited is null));
            Assert.Equal(plan.Trials.Length, recording.Annotations.Length);
            double[] contraction = cheek[22_000..28_000];
            double[] rest = cheek[2_000..8_000];
            Assert.Equal("raise lip corner", plan.Trials[1].Label);
            Assert.Equal(25, Plain.Rms(contraction), 2.5);

            // 1.5 µV of muscle, 0.84 µV x √(1000/430) of noise: 1.97 µV.
            Assert.Equal(1.97, Plain.Rms(rest), 0.15);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void TheBenchmarkIsAnHourOf360Trials()
    {
        ImmutableArray<PlannedTrial> trials = BenchmarkSession.Plan.Trials;

        Assert.Equal(3600, BenchmarkSession.Plan.DurationS);
        Assert.Equal(360, trials.Length);
        Assert.All(trials, trial => Assert.InRange(trial.DurationS, 3, 8));
        Assert.True(trials.Max(trial => trial.DurationS) - trials.Min(trial => trial.DurationS) > 4);
        Assert.All(trials.Zip(trials.Skip(1)), pair => Assert.True(pair.First.EndS < pair.Second.OnsetS));
    }

    private static void SameAfterwards(SessionPlan plan, string format)
    {
        MadeRecording made = MadeRecording.Make(plan);
        using Recording expected = made.Open();
        string path = Path.GetTempFileName();
        try
        {
            EdfFiles.Write(made, path);
            using Recording found = EdfReader.Open(path, new ReadOptions());

            Assert.Equal(format, found.Format);
            Assert.Equal(format, expected.Format);
            Assert.Empty(found.Warnings);
            Assert.Equal(expected.DurationS, found.DurationS, 1e-9);
            Assert.True(expected.Annotations.SequenceEqual(found.Annotations));
            foreach ((Channel want, Channel got) in expected.Channels.Zip(found.Channels))
            {
                SameChannel(expected, want, found, got);
            }
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static void SameChannel(Recording expected, Channel want, Recording found, Channel got)
    {
        Assert.Equal(want.Label, got.Label);
        Assert.Equal(want.Rate, got.Rate);
        Assert.Equal(want.Step, got.Step, 1e-12);
        Assert.Equal(want.LowerRail!.Value, got.LowerRail!.Value, 1e-9);
        Assert.Equal(want.UpperRail!.Value, got.UpperRail!.Value, 1e-9);
        Assert.True(want.Stretches.SequenceEqual(got.Stretches));
        double[] wanted = new double[want.StoredLength];
        double[] read = new double[want.StoredLength];
        expected.Samples.Read(want.Index, 0, wanted);
        found.Samples.Read(got.Index, 0, read);
        for (int i = 0; i < wanted.Length; i++)
        {
            Assert.Equal(wanted[i], read[i], 1e-9);
        }
    }

    private static byte[] Bytes(SessionPlan plan)
    {
        string path = Path.GetTempFileName();
        try
        {
            EdfFiles.Write(MadeRecording.Make(plan), path);
            return File.ReadAllBytes(path);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
