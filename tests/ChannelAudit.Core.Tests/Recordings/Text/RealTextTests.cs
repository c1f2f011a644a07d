using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Text;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>Real chin EMG, 12-bit codes at 250 Hz; the facts are those of the data folder's README.</summary>
public sealed class RealTextTests
{
    [SkippableFact]
    public void EveryChinFileIsReadAsCodesAtTwoHundredAndFiftyHertz()
    {
        string[] files = ChinFiles();

        Assert.Equal(35, files.Length);
        foreach (string path in files)
        {
            using Recording recording = DelimitedText.Open(path, new ReadOptions(Unit: "none"));
            Channel[] audited = [.. recording.Channels.Where(channel => channel.NotAudited is null)];
            Assert.StartsWith("CH1", audited[0].Label, StringComparison.Ordinal);
            Assert.InRange(audited.Length, 2, 3);
            Assert.All(audited, channel => Assert.Equal(new Rational(250, 1), channel.Rate));
            Assert.All(audited, channel => Assert.Equal(File.ReadLines(path).Count() - 1, channel.StoredLength));
            Assert.All(audited, channel => Assert.False(channel.IsMicrovolts));
            Assert.Equal(["Label", "Phase"], recording.Channels.Where(channel => channel.NotAudited is not null).Select(channel => channel.Label).ToArray());
        }
    }

    [SkippableFact]
    public void TheHeldRailsAreThere()
    {
        (double high, int highRun) = LongestHold("NOISE_014", 4095);
        (double low, int lowRun) = LongestHold("NOISE_049", 0);

        Assert.Equal(4095, high);
        Assert.InRange(highRun, 58, 115);
        Assert.Equal(0, low);
        Assert.Equal(40, lowRun);
    }

    private static (double Value, int Run) LongestHold(string name, double value)
    {
        string path = ChinFiles().Single(file => file.Contains("rails", StringComparison.Ordinal) && Path.GetFileName(file).StartsWith(name, StringComparison.Ordinal));
        using Recording recording = DelimitedText.Open(path, new ReadOptions(Unit: "none"));
        double[] samples = new double[recording.Channels[1].StoredLength];
        recording.Samples.Read(1, 0, samples);
        int longest = 0;
        int run = 0;
        foreach (double sample in samples)
        {
            run = sample == value ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return (value, longest);
    }

    private static string[] ChinFiles()
    {
        string? root = Environment.GetEnvironmentVariable("CHANNELAUDIT_REAL_DATA");
        Skip.If(root is null, "CHANNELAUDIT_REAL_DATA is not set: the real recordings are not on this machine");
        return Directory.GetFiles(Path.Combine(root!, "chin"), "*.csv", SearchOption.AllDirectories);
    }
}
