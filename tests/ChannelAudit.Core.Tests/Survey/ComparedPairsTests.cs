using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>All pairs of a face; of many channels adjacent ones only, where the setup names any.</summary>
public sealed class ComparedPairsTests
{
    [Fact]
    public void OfManyChannelsOnlyAdjacentOnesAreCompared()
    {
        RecordingSurvey survey = Survey(17, Setup((2, 1), (16, 0), (3, 4)));

        Assert.Equal([(0, 16), (1, 2), (3, 4)], survey.Pairs.Select(pair => (pair.A, pair.B)));
        Assert.Equal([0, 1, 2, -1], new[] { (0, 16), (1, 2), (3, 4), (2, 3) }.Select(pair => survey.IndexOfPair(pair.Item1, pair.Item2)));
        Assert.All(survey.Pairs, pair => Assert.NotNull(pair.All));
    }

    [Fact]
    public void WhereNoneIsNamedAllAreCompared() => Assert.Equal(17 * 16 / 2, Survey(17, Setup()).Pairs.Length);

    [Fact]
    public void UpToSixteenChannelsAllAreCompared() => Assert.Equal(16 * 15 / 2, Survey(16, Setup((2, 1))).Pairs.Length);

    private static RecordingSurvey Survey(int channels, StudySetup setup)
    {
        using Recording recording = PlainRecording.Of(
            new Rational(1000, 1), Made.Stretches((0, 2500)), [.. Enumerable.Range(0, channels).Select(i => Made.Noise((ulong)i, 5, 2500))]);
        return RecordingSurvey.Of(recording, [.. recording.Channels.Select((channel, i) => (channel, Name(i)))], [], setup, CancellationToken.None);
    }

    private static StudySetup Setup(params (int Site, int Near)[] adjacent) => StudySetup.Empty with
    {
        Sites = [.. adjacent.Select(pair => new SiteSetup { Name = Name(pair.Site), Channel = Name(pair.Site), Adjacent = ImmutableArray.Create(Name(pair.Near), SiteSetup.Ground) })],
    };

    private static string Name(int channel) => "site " + channel.ToString(CultureInfo.InvariantCulture);
}
