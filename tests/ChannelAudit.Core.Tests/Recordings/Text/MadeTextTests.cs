using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Text;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>What the synthesis writes as text comes back: a writer that knows nothing of the reader.</summary>
public sealed class MadeTextTests
{
    [Theory]
    [InlineData('\t', '.')]
    [InlineData(';', ',')]
    public void AGapAndMissingSamplesComeBackWhereTheyWereMade(char separator, char decimalSign)
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 2,
            Faults =
            [
                new MissingSamples("brow") { Span = new FaultSpan(0.1M, 0.2M) },
                new RecordingGap { Span = new FaultSpan(0.5M, 0.75M) },
            ],
        });
        using TemporaryFolder folder = new();
        string path = folder.In("made.txt");
        TextFile.Write(made, path, new TextFileLayout { Separator = separator, DecimalSign = decimalSign, HasUnitRow = true, Preamble = "Session: 7\n" });

        using Recording recording = DelimitedText.Open(path, new ReadOptions());

        Assert.All(recording.Channels, channel => Assert.Equal(new Rational(2000, 1), channel.Rate));
        Assert.Equal(2.0, recording.DurationS, 12);
        Assert.Equal([new Stretch(0, 1000, 0), new Stretch(1500, 2500, 1000)], Of("EMG cheek").Stretches.ToArray());
        Assert.Equal([new Stretch(0, 200, 0), new Stretch(400, 600, 200), new Stretch(1500, 2500, 800)], Of("EMG brow").Stretches.ToArray());

        Channel Of(string label) => recording.Channels.Single(channel => string.Equals(channel.Label, label, StringComparison.Ordinal));
    }
}
