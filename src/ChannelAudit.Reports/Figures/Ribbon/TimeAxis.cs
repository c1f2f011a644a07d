using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The true time axis: seconds to pixels, and where the ticks are.</summary>
internal sealed class TimeAxis
{
    /// <summary>An axis of this length and more has times of a clock, a shorter one seconds.</summary>
    public const double ClockFromS = 20;

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

    /// <summary>Whether times are those of a clock however short the axis is: <c>02:35.5</c>, as headings and tables have them. There is none before the recording then.</summary>
    public bool IsClock { get; init; }

    /// <summary>The pixel of a time, kept on the axis.</summary>
    public float X(double seconds) => Left + (float)((Right - Left) * Math.Clamp((seconds - FromS) / (ToS - FromS), 0, 1));

    /// <summary>Times with their labels, so far apart that no two labels touch.</summary>
    public ImmutableArray<(double Seconds, string Text)> Ticks(TextStyle style)
    {
        double secondsAPixel = (ToS - FromS) / (Right - Left);
        double longestS = Room(1, style) * secondsAPixel;
        double stepS = StepsS.FirstOrDefault(step => step >= Room(step, style) * secondsAPixel, Math.Ceiling(longestS / 86400) * 86400);
        ImmutableArray<(double, string)>.Builder ticks = ImmutableArray.CreateBuilder<(double, string)>();
        for (double index = Math.Ceiling((IsClock ? Math.Max(0, FromS) : FromS) / stepS); index * stepS <= ToS; index++)
        {
            // Zero has no sign.
            double seconds = (index * stepS) + 0.0;
            ticks.Add((seconds, Text(seconds, stepS)));
        }

        return ticks.ToImmutable();
    }

    private static double StartOf(Segments.Trial trial) => (double)Math.Min(trial.OnsetS, trial.WindowFromS);

    private static double EndOf(Segments.Trial trial) => (double)Math.Max(trial.OnsetS + trial.DurationS, trial.WindowToS);

    private float Room(double stepS, TextStyle style)
    {
        float text = IsClock
            ? TextMeasure.Width(Text(ToS, stepS), style)
            : Math.Max(TextMeasure.Width(Text(ToS, 1), style), TextMeasure.Width("0.25 s", style));
        return text + (2.5f * style.Size);
    }

    private string Text(double seconds, double stepS)
    {
        if (IsClock)
        {
            return Quantities.Clock(seconds, Math.Max(0, (int)Math.Ceiling(-Math.Log10(stepS))));
        }

        return stepS < 1 || ToS - FromS < ClockFromS
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Round(seconds, 3):0.###} s")
            : Quantities.Clock(seconds);
    }
}
