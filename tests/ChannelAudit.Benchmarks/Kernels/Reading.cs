using BenchmarkDotNet.Attributes;
using ChannelAudit.Benchmarks.Making;
using ChannelAudit.Recordings;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Benchmarks.Kernels;

/// <summary>A minute of four channels: its samples from EDF and from text, and the text split only.</summary>
[MemoryDiagnoser]
public class Reading
{
    private const int Seconds = 60;

    private readonly string folder = Directory.CreateTempSubdirectory("channelaudit-kernels-").FullName;
    private readonly double[] block = new double[2000 * 16];

    private string Edf => Path.Combine(folder, "minute.edf");

    private string Csv => Path.Combine(folder, "minute.csv");

    /// <summary>Makes the recordings.</summary>
    [GlobalSetup]
    public void Make()
    {
        RecordingMaker.Write(Edf, Seconds, 4, BenchmarkSession.Plan.Seed);
        TableMaker.Write(Edf, Csv);
    }

    /// <summary>Removes them.</summary>
    [GlobalCleanup]
    public void Remove() => Directory.Delete(folder, recursive: true);

    /// <summary>Opens EDF and reads every sample.</summary>
    [Benchmark]
    public double EdfRead() => Sum(Edf);

    /// <summary>Opens text, which spools its numbers, and reads every sample.</summary>
    [Benchmark]
    public double TextRead() => Sum(Csv);

    /// <summary>Splits the text.</summary>
    [Benchmark(Baseline = true)]
    public long TextSplit() => TableSplitter.CharactersOf(Csv);

    private double Sum(string path)
    {
        using Recording recording = RecordingOpener.Open(path, new ReadOptions());
        double sum = 0;
        foreach (Channel channel in recording.Channels.Where(channel => channel.NotAudited is null))
        {
            for (long first = 0; first < channel.StoredLength; first += block.Length)
            {
                int length = (int)Math.Min(block.Length, channel.StoredLength - first);
                recording.Samples.Read(channel.Index, first, block.AsSpan(0, length));
                sum += block[0];
            }
        }

        return sum;
    }
}
