using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>A trigger's spike stays one where a loud muscle hides it from the test of shape in most trials.</summary>
public sealed class StimulusLockTests
{
    private const int Rate = 1000;
    private const int Trials = 9;

    [Fact]
    public void ASpikeThatTheMuscleHidesInMostTrialsIsStillLocked()
    {
        ChannelPops pops = PopsOf(_ => 500, loudFrom: 3);

        Assert.Equal((0, 3), (pops.All.Count, pops.Locked));
    }

    [Fact]
    public void TheSameSpikesAtOtherTimesAreNot()
    {
        ChannelPops pops = PopsOf(trial => 300 + (90 * trial), loudFrom: 3);

        Assert.Equal((3, 0), (pops.All.Count, pops.Locked));
    }

    [Fact]
    public void NorAreSpikesOfTheFirstTrialsOnly()
    {
        ChannelPops pops = PopsOf(trial => trial < 3 ? 500 : null, loudFrom: 3);

        Assert.Equal((3, 0), (pops.All.Count, pops.Locked));
    }

    // Trials of 2 s every 4 s; from one on a muscle of 12 µV beside spikes of 80.
    private static ChannelPops PopsOf(Func<int, int?> delay, int loudFrom)
    {
        double[] samples = Made.Noise(61, 1, 4000 * Trials);
        double[] muscle = Made.Noise(62, 12, samples.Length);
        ImmutableArray<Trial>.Builder trials = ImmutableArray.CreateBuilder<Trial>();
        for (int trial = 0; trial < Trials; trial++)
        {
            int onset = 1000 + (4000 * trial);
            trials.Add(new Trial { Number = trial + 1, Label = "harbour", Role = TrialRole.Scored, OnsetS = onset / 1000M, DurationS = 2, WindowFromS = onset / 1000M, WindowToS = (onset / 1000M) + 2 });
            for (int i = onset; i < onset + 2000 && trial >= loudFrom; i++)
            {
                samples[i] += muscle[i];
            }

            if (delay(trial) is { } late)
            {
                (samples[onset + late - 1], samples[onset + late], samples[onset + late + 1]) =
                    (samples[onset + late - 1] + 40, samples[onset + late] + 80, samples[onset + late + 1] + 40);
            }
        }

        using Recording recording = PlainRecording.Of(new Rational(Rate, 1), Made.Stretches((0, samples.Length)), samples);
        return RecordingSurvey.Of(recording, [(recording.Channels[0], "a")], trials.ToImmutable(), StudySetup.Empty, CancellationToken.None).Channels[0].Pops;
    }
}
