using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Spectra;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Measures;

/// <summary>
/// Real data: the ECG that SciPy ships (5 min at 360 Hz). The line figures were worked out with NumPy and SciPy from the definition alone:
/// 9.80 µV and -20.85 dB at 60 Hz; baseline range 4.5 mV; values from -3.49 to 3.65 mV.
/// </summary>
public sealed class RealEcgTests
{
    [SkippableFact]
    public void LineNoiseOfTheWholeFileIsWhatTheDefinitionGivesElsewhere()
    {
        double[] samples = Export();
        Channel channel = ChannelOf(samples.Length);
        SpectralFrame frame = SpectralFrame.Of(channel, 60, 60, []);
        double[] density = Welch.Density(samples, 360, 360);
        int segments = Welch.SegmentCount(samples.Length, 360, 180);

        PeakReading line = LineNoise.Of(density, frame, segments);

        Assert.Equal(9.80, line.Rms, 0.005);
        Assert.Equal(-20.85, line.RatioDb(BandAmplitude.Power(density, frame)!.Value)!.Value, 0.005);
    }

    [SkippableFact]
    public void ARealHeartHitsNoRailAndLeavesItsRange()
    {
        double[] samples = Export();
        ExtremePile upper = new(5);
        ExtremePile lower = new(5);
        BaselineLevels levels = new(360, 360);

        upper.Add(samples, 1);
        lower.Add(samples, -1);
        levels.Add(samples, 0);

        Assert.Equal(3650, upper.Extreme, 10.0);
        Assert.Equal(-3490, -lower.Extreme, 10.0);
        Assert.False(upper.IsRail(samples.Length));
        Assert.False(lower.IsRail(samples.Length));
        Assert.True(levels.Levels.Max() - levels.Levels.Min() > 500);
    }

    private static Channel ChannelOf(int samples) => new()
    {
        Index = 0,
        Label = "ECG",
        RawLabel = "ECG",
        Rate = new Rational(360, 1),
        Step = 5,
        Stretches = [new Stretch(0, samples, 0)],
    };

    private static double[] Export()
    {
        Skip.IfNot(
            string.Equals(Environment.GetEnvironmentVariable("CHANNELAUDIT_SCIPY"), "1", StringComparison.Ordinal),
            "CHANNELAUDIT_SCIPY is not 1: the ECG comes from Debian's python3-scipy");
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            ProcessStartInfo start = new("/usr/bin/python3", [RepositoryRoot.Fixture("oracles/export_ecg.py"), file]);
            using Process process = Process.Start(start)!;
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            return [.. File.ReadLines(file).Select(line => double.Parse(line, CultureInfo.InvariantCulture))];
        }
        finally
        {
            File.Delete(file);
        }
    }
}
