using System.Diagnostics;
using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Our reader and writer against an independent general-purpose library: libedf of Debian's package libedf-dev, by the two programs in
/// <c>fixtures/oracles/libedf</c>. Run by <c>fixtures/oracles/check_libedf.sh</c>.</summary>
public sealed class LibEdfTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("channelaudit-libedf-");

    [SkippableTheory]
    [InlineData("edf", "EDF+C", 65536)]
    [InlineData("bdf", "BDF+C", 16777216)]
    public void WhatTheLibraryWritesIsReadExactly(string format, string name, int span)
    {
        Build();
        string path = Path.Combine(folder.FullName, "known." + format);
        Run(Path.Combine(folder.FullName, "write_known"), path, format);
        using Recording recording = EdfReader.Open(path, new ReadOptions());

        Assert.Equal(name, recording.Format);
        Assert.Empty(recording.Warnings);
        Assert.Equal(["EMG cheek", "EMG brow"], recording.Channels[..2].Select(channel => channel.Label), StringComparer.Ordinal);
        Assert.Equal([500.0, 250.0], recording.Channels[..2].Select(channel => channel.Rate.Value));
        Assert.Equal([-500.25, -1500.0], recording.Channels[..2].Select(channel => channel.LowerRail!.Value));
        Assert.Equal((0.1, 200.0, 50.0), (recording.Channels[0].Prefilter.HighpassHz, recording.Channels[0].Prefilter.LowpassHz, recording.Channels[0].Prefilter.NotchesHz[0]));
        Assert.Equal([new(0.5m, 1.25m, "smile \u00B5 \u4E2D"), new Annotation(1.5001m, null, "rest")], recording.Annotations.ToArray());
        for (int signal = 0; signal < 2; signal++)
        {
            // The formula of write_known.c.
            int count = 20 * (signal == 0 ? 50 : 25);
            long[] expected = [.. Enumerable.Range(0, count).Select(i => (((i * 7919L) + (signal * 104729L)) % span) - (span / 2))];
            Assert.Equal(expected, EdfCodes.Read(path, signal));
        }
    }

    [SkippableTheory]
    [InlineData(false)]
    [InlineData(true)]
    public void WhatWeWriteIsReadExactlyByTheLibrary(bool is24Bit)
    {
        Build();
        string path = Path.Combine(folder.FullName, "ours.edf");
        double[] cheek = [.. Enumerable.Range(0, 600).Select(i => 520 * Math.Sin(i * 0.1))];
        double[] brow = [.. Enumerable.Range(0, 300).Select(i => 0.2 * Math.Cos(i * 0.3))];
        EdfWriter.Write(path, new EdfContent(
            [
                new("EMG cheek", -500.25, 500.25, 200, EdfSignalContent.From(cheek)) { Prefilter = "HP:0.1Hz LP:500Hz" },
                new("EMG brow", -0.25, 0.25, 100, EdfSignalContent.From(brow)) { Unit = "mV" },
            ],
            3)
        {
            Is24Bit = is24Bit,
            RecordDurationS = 0.5m,
            Annotations = [new(0.25m, 0.5m, "smile \u00B5"), new(1.2m, null, "rest")],
        });

        string[] lines = Run(Path.Combine(folder.FullName, "print_file"), path).Split('\n');

        string limits = is24Bit ? "-8388608|8388607" : "-32768|32767";
        Assert.Equal(is24Bit ? "file type 3 signals 2 records 3 record 5000000" : "file type 1 signals 2 records 3 record 5000000", lines[0]);
        Assert.Equal("annotation 2500000 0.5 smile \u00B5", lines[1]);
        Assert.Equal("annotation 12000000  rest", lines[2]);
        Assert.Equal($"signal EMG cheek|uV|-500.25|500.25|{limits}|HP:0.1Hz LP:500Hz", lines[3]);
        Assert.Equal($"signal EMG brow|mV|-0.25|0.25|{limits}|", lines[5]);
        double scale = is24Bit ? 16777215 : 65535;
        Assert.Equal(Codes(cheek, 500.25, scale), lines[4]);
        Assert.Equal(Codes(brow, 0.25, scale), lines[6]);
    }

    public void Dispose() => folder.Delete(recursive: true);

    // The affine rule turned round, by hand: code = dmin + (x + limit) / (2 limit) x (dmax - dmin), rounded, held inside the limits.
    private static string Codes(double[] samples, double limit, double scale) => "codes" + string.Concat(samples.Select(x =>
    {
        long code = (long)Math.Round(((Math.Clamp(x, -limit, limit) + limit) / (2 * limit) * scale) - ((scale + 1) / 2));
        return " " + code.ToString(CultureInfo.InvariantCulture);
    }));

    private void Build()
    {
        Skip.IfNot(
            string.Equals(Environment.GetEnvironmentVariable("CHANNELAUDIT_LIBEDF"), "1", StringComparison.Ordinal),
            "CHANNELAUDIT_LIBEDF is not 1: the programs need gcc and libedf-dev");
        Run("sh", RepositoryRoot.Fixture("oracles/libedf/build.sh"), folder.FullName);
    }

    private static string Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        })!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} failed: {output}{error.GetAwaiter().GetResult()}");
        return output;
    }
}
