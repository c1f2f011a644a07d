using ChannelAudit.Recordings;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>The survey's list of pairs.</summary>
public sealed class RecordingSurveyTests
{
    [Fact]
    public void EveryPairIsFoundWhereItStands()
    {
        using Recording recording = PlainRecording.Of(
            new Rational(1000, 1), Made.Stretches((0, 1500)), [.. Enumerable.Range(0, 7).Select(i => Made.Noise((ulong)i, 5, 1500))]);

        RecordingSurvey survey = RecordingSurvey.Of(
            recording, [.. recording.Channels.Select(channel => (channel, channel.Label))], [], StudySetup.Empty, CancellationToken.None);

        Assert.Equal(21, survey.Pairs.Length);
        Assert.Equal(Enumerable.Range(0, 21), survey.Pairs.Select(pair => survey.IndexOfPair(pair.A, pair.B)));
        Assert.Throws<ArgumentOutOfRangeException>(() => survey.IndexOfPair(3, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => survey.IndexOfPair(3, 7));
    }
}
