using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The true time axis: seconds to pixels, and where the ticks are.</summary>
internal sealed class TimeAxis
{
    private const double ShortestS = 1e-3;

    private static readonly ImmutableArray<double> StepsS =
    [
        0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400,
    ];

    public TimeAxis(RecordingResult recording, float left, float right)
    {
        Left = left;
        Right = right;
        RecordedS = Math.Max(recording.DurationS, 0);
        FromS = Math.Min(0, recording.Trials.Select(StartOf).DefaultIfEmpty(0).Min());
        ToS = Math.Max(Math.Max(RecordedS, FromS + ShortestS), recording.Trials.Select(EndOf).DefaultIfEmpty(0).Max());
    }

    /// <summary>The axis of a stretch of time.</summary>
    public TimeAxis(double fromS, double toS, float left, float right)
    {
        Left = left;
        Right = right;
        RecordedS = toS;
        FromS = fromS;
        ToS = Math.Max(toS, fromS + ShortestS);
    }

    /// <summary>Left edge in pixels.</summary>
    public float Left { get; }

    /// <summary>Right edge in pixels.</summary>
    public float Right { get; }

    /// <summary>The first time shown: 0, or earlier when a trial starts before the recording.</summary>
    public double FromS { get; }

    /// <summary>The last time shown: the end of the recording, or later when a trial runs past it.</summary>
    public double ToS { get; }

    /// <summary>The end of the recording.</summary>
    public double RecordedS { get; }

    /// <summary>The pixel of a time, kept on the axis.</summary>
    public float X(double seconds) => Left + (float)((Right - Left) * Math.Clamp((seconds - FromS) / (ToS - FromS), 0, 1));

    /// <summary>Times with their labels, so far apart that no two labels touch.</summary>
    public ImmutableArray<(double Seconds, string Text)> Ticks(TextStyle style)
    {
        float room = Math.Max(TextMeasure.Width(Text(ToS, 1), style), TextMeasure.Width("0.25 s", style)) + (2.5f * style.Size);
        double secondsAPixel = (ToS - FromS) / (Right - Left);
        double stepS = StepsS.FirstOrDefault(step => step >= room * secondsAPixel, Math.Ceiling(room * secondsAPixel / 86400) * 86400);
        ImmutableArray<(double, string)>.Builder ticks = ImmutableArray.CreateBuilder<(double, string)>();
        for (double index = Math.Ceiling(FromS / stepS); index * stepS <= ToS; index++)
        {
            // Zero has no sign.
            double seconds = (index * stepS) + 0.0;
            ticks.Add((seconds, Text(seconds, stepS)));
        }

        return ticks.ToImmutable();
    }

    private static double StartOf(Segments.Trial trial) => (double)Math.Min(trial.OnsetS, trial.WindowFromS);

    private static double EndOf(Segments.Trial trial) => (double)Math.Max(trial.OnsetS + trial.DurationS, trial.WindowToS);

    private string Text(double seconds, double stepS)
    {
        const double clockFromS = 20;
        return stepS < 1 || ToS - FromS < clockFromS
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Round(seconds, 3):0.###} s")
            : Quantities.Clock(seconds);
    }
}
