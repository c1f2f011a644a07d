using ChannelAudit.Recordings;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Filters;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>Which files can be cleared of motion, and which channels see blinks.</summary>
public sealed class MotionGateTests
{
    private const double Rate = 1000;

    [Theory]
    [InlineData(6)]
    [InlineData(10)]
    [InlineData(20)]
    public void AHighPassThatTheFileDoesNotStateIsSeen(double cornerHz)
    {
        double[] noise = Made.Noise(81, 2, 60_000);
        Butterworth.HighPass(cornerHz, Rate).FilterInPlace(noise);

        Assert.Equal("hardly any power from 2 to 4 Hz: the file looks high-passed", Survey(noise).MotionHidden);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1)]
    public void NoiseThatReachesDownIsNotTakenForFiltered(double cornerHz)
    {
        double[] noise = Made.Noise(82, 2, 60_000);
        if (cornerHz > 0)
        {
            Butterworth.HighPass(cornerHz, Rate).FilterInPlace(noise);
        }

        Assert.Null(Survey(noise).MotionHidden);
    }

    [Theory]
    [InlineData("orbicularis oculi", "cheek", true)]
    [InlineData("corrugator supercilii", "cheek", true)]
    [InlineData("orbicularis oris", "eye", false)]
    [InlineData("zygomaticus major", "cheek", false)]
    [InlineData(null, "left Eye", true)]
    [InlineData(null, "brow", true)]
    [InlineData(null, "cheek", false)]
    public void TheMuscleOrElseTheNameTellsWhereBlinksAreSeen(string? muscle, string name, bool isNear)
    {
        StudySetup setup = new() { Sites = [new SiteSetup { Name = name, Channel = "EMG", Muscle = muscle }] };

        Assert.Equal(isNear, EyeSite.Is(Made.Channel(Rate), name, setup));
        Assert.True(EyeSite.Is(Made.Channel(Rate) with { Label = "EMG EYE" }, "EMG EYE", StudySetup.Empty));
    }

    private static ChannelSurvey Survey(double[] samples)
    {
        using Recording recording = PlainRecording.Of(new Rational(1000, 1), Made.Stretches((0, samples.Length)), samples);
        return RecordingSurvey.Of(recording, [(recording.Channels[0], "a")], [], StudySetup.Empty, CancellationToken.None).Channels[0];
    }
}
