using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Text;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

public sealed class LongTextTests
{
    [Fact]
    public void MemoryDoesNotGrowWithTheLengthAndTheSpoolVanishes()
    {
        long brief = AllocatedBytes(50_000);
        long tenTimes = AllocatedBytes(500_000);

        // Ten times the rows are 16 MB of numbers more and 10 MB of text more; what may grow is a list of one number in 4096 rows.
        Assert.InRange(tenTimes - brief, -1_000_000, 1_000_000);
    }

    [Fact]
    public void ARefusedFileLeavesNoSpoolBehind()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("channelaudit-test-");
        try
        {
            string fault = TextCase.Fault("time,a\n0.0,1\n0.1,2\n0.2,1\n0.1,2\n", new ReadOptions(TemporaryFolder: folder.FullName));

            Assert.StartsWith("rec.csv, line 5", fault, StringComparison.Ordinal);
            Assert.Empty(folder.GetFiles());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void AnyRangeReadsTheSameAsTheWhole()
    {
        string text = "t,a,b\n" + TextCase.Rows(10_000, i => string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{i},{(i % 100 == 50 ? "" : -i)}"));
        using TextCase opened = TextCase.Open(text);
        double[] whole = opened.Samples("b");
        foreach (int start in new[] { 0, 1, 49, 50, 99, 4000, 4095, 4096, 8191, 9000 })
        {
            double[] part = new double[700];
            opened.Recording.Samples.Read(1, start, part);
            Assert.Equal(whole.AsSpan(start, 700).ToArray(), part);
        }

        Assert.Equal(9_900, whole.Length);
        Assert.Throws<ArgumentOutOfRangeException>(() => opened.Recording.Samples.Read(1, 9_890, new double[11]));
        Assert.Throws<ArgumentOutOfRangeException>(() => opened.Recording.Samples.Read(1, -1, new double[1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => opened.Recording.Samples.Read(2, 0, new double[1]));
    }

    // Of many columns fewer rows lie side by side: 300 have 436 in a block, 20 all 4096.
    [Theory]
    [InlineData(20, 5000)]
    [InlineData(300, 1000)]
    public void ManyColumnsReadTheSameAsFew(int columns, int rows)
    {
        using TextCase opened = TextCase.Open(TextCase.Rows(rows, row => string.Join('\t', Enumerable.Range(0, columns).Select(column => ((row * 31 % 997 * 1000) + column).ToString(CultureInfo.InvariantCulture)))), new ReadOptions(SamplingHz: 1000));
        for (int column = 0; column < columns; column += 7)
        {
            double[] samples = new double[rows - 3];
            opened.Recording.Samples.Read(column, 2, samples);

            Assert.Equal(Enumerable.Range(2, rows - 3).Select(row => (row * 31 % 997 * 1000.0) + column), samples);
        }
    }

    private static long AllocatedBytes(int rows)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("channelaudit-test-");
        try
        {
            string path = Path.Combine(folder.FullName, "long.csv");
            using (StreamWriter writer = new(path))
            {
                writer.Write("time,a,b,c\n");
                for (int i = 0; i < rows; i++)
                {
                    writer.Write(string.Create(CultureInfo.InvariantCulture, $"{i / 2000.0:0.0000},{i % 1000},{-(i % 77) / 10.0:0.0},{i % 13}\n"));
                }
            }

            DirectoryInfo spools = folder.CreateSubdirectory("spool");
            long before = GC.GetAllocatedBytesForCurrentThread();
            using Recording recording = DelimitedText.Open(path, new ReadOptions(TemporaryFolder: spools.FullName));
            long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            double[] last = new double[3];
            recording.Samples.Read(1, rows - 3, last);

            Assert.Equal(new Rational(2000, 1), recording.Channels[0].Rate);
            Assert.Equal(rows, recording.Channels[0].StoredLength);
            Assert.Equal([.. Enumerable.Range(rows - 3, 3).Select(i => -(i % 77) / 10.0)], last);
            Assert.Single(spools.GetFiles());
            recording.Dispose();
            Assert.Empty(spools.GetFiles());
            return allocated;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
