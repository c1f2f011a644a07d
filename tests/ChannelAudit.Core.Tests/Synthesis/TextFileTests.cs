using System.Globalization;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

public sealed class TextFileTests
{
    [Fact]
    public void TextHoldsTheTimesAndTheValuesOfEveryChannel()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan { Seed = 1, DurationS = 0.5M });

        string[] lines = Written(made, new TextFileLayout { HasUnitRow = true });

        Assert.Equal("time\tEMG cheek\tEMG brow\tEMG eye", lines[0]);
        Assert.Equal("s\tuV\tuV\tuV", lines[1]);
        Assert.Equal(1002, lines.Length);
        string[] cells = lines[502].Split('\t');
        Assert.Equal("0.25", cells[0]);
        Assert.Equal(Plain.Samples(made, "brow")[500], double.Parse(cells[2], CultureInfo.InvariantCulture), 1e-12);
    }

    [Fact]
    public void TextCanHaveDecimalCommasAndNoTimes()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan { Seed = 1, DurationS = 0.01M });

        string[] lines = Written(made, new TextFileLayout { Separator = ';', DecimalSign = ',', HasTime = false, Preamble = "Session;7\n" });

        Assert.Equal("Session;7", lines[0]);
        Assert.Equal("EMG cheek;EMG brow;EMG eye", lines[1]);
        Assert.DoesNotContain('.', lines[2]);
        Assert.Equal(3, lines[2].Split(';').Length);
    }

    [Fact]
    public void MissingSamplesAreNotNumbersAndAGapHasNoRows()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 1,
            Faults =
            [
                new MissingSamples("brow") { Span = new FaultSpan(0.1M, 0.2M) },
                new RecordingGap { Span = new FaultSpan(0.5M, 0.75M) },
            ],
        });

        string[] lines = Written(made, new TextFileLayout());

        Assert.Equal(1 + 1500, lines.Length);
        Assert.Equal(200, lines.Count(line => line.Contains("NaN", StringComparison.Ordinal)));
        Assert.StartsWith("0.4995\t", lines[1000], StringComparison.Ordinal);
        Assert.StartsWith("0.75\t", lines[1001], StringComparison.Ordinal);
    }

    private static string[] Written(MadeRecording made, TextFileLayout layout)
    {
        string path = Path.GetTempFileName();
        try
        {
            TextFile.Write(made, path, layout);
            string text = File.ReadAllText(path);
            Assert.EndsWith("\n", text, StringComparison.Ordinal);
            Assert.DoesNotContain('\r', text);
            return text[..^1].Split('\n');
        }
        finally
        {
            File.Delete(path);
        }
    }
}
