using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Survey;

namespace ChannelAudit.Pilot;

/// <summary>Whether all task marks are shifted in time against the signal, as after a clock that was set wrongly: said, never corrected.</summary>
/// <remarks>
/// The mean of a site's <see cref="Envelope"/> between the marks of its own task, over its 20th percentile, in dB, for every shift of <see cref="StepS"/> up to
/// <see cref="MostS"/> either way. One shift for all sites must bring 3 dB and more in the median, make no site weaker, and let each stand out by 6 dB; sites
/// that stand out at no shift say nothing, and two at the least are needed. A contraction of 4 s that begins 1 s after its mark loses 2.5 dB: late is no
/// shift.
/// Engineering judgement, held by tests.
/// </remarks>
internal static class TaskMarks
{
    private const double MostS = 5;
    private const double StepS = 0.1;
    private const double StrongDb = 6;
    private const double GainDb = 3;
    private const double NearDb = 0.05;
    private const int FewestSites = 2;

    /// <summary>By how many seconds the marks are late, early when negative; null when they seem in place or it cannot be told.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">The audited channels and their names.</param>
    /// <param name="result">Its trials.</param>
    /// <param name="setup">Names each site's task.</param>
    /// <param name="cancellation">Checked for every block of samples.</param>
    public static double? LateS(
        Recording recording, ImmutableArray<(Channel Channel, string Name)> channels, RecordingResult result, StudySetup setup, CancellationToken cancellation)
    {
        List<double[]> answers = [];
        foreach ((Channel channel, string name) in channels)
        {
            Trial[] own = TrialsOf(name, result, setup);
            if (own.Length > 0 && Envelope.Of(recording, channel, cancellation) is { Rest: > 0 } envelope)
            {
                answers.Add(Answers(envelope, own));
            }
        }

        answers.RemoveAll(answer => answer.Max() < StrongDb);
        return answers.Count < FewestSites ? null : Best(answers) is { } place ? Math.Round(-ShiftS(place), 1) : null;
    }

    private static Trial[] TrialsOf(string name, RecordingResult result, StudySetup setup)
    {
        string? task = setup.Sites.FirstOrDefault(site => string.Equals(site.Name, name, StringComparison.Ordinal))?.Task?.Trim();
        return [.. result.Trials.Where(trial => trial.Role == TrialRole.Task && string.Equals(trial.Label, task, StringComparison.Ordinal))];
    }

    // One value a shift, from the earliest to the latest.
    private static double[] Answers(Envelope envelope, Trial[] own) =>
        [.. Enumerable.Range(0, (2 * Steps) + 1).Select(place => own.Select(trial => Decibels(envelope, trial, ShiftS(place))).Min())];

    private static double Decibels(Envelope envelope, Trial trial, double shiftS)
    {
        int from = (int)Math.Round(((double)trial.OnsetS + shiftS) * Envelope.RateHz);
        int to = from + (int)Math.Round((double)trial.DurationS * Envelope.RateHz);
        if (from < 0 || to > envelope.Values.Length || to <= from)
        {
            return double.NegativeInfinity;
        }

        double sum = 0;
        foreach (double value in envelope.Values[from..to])
        {
            sum += value;
        }

        return double.IsNaN(sum) || sum <= 0 ? double.NegativeInfinity : 20 * Math.Log10(sum / (to - from) / envelope.Rest);
    }

    private static int? Best(List<double[]> answers)
    {
        double[] gains = [.. Enumerable.Range(0, answers[0].Length).Select(place => Gain(answers, place))];
        double most = gains.Max();

        // A contraction that lasts longer than its mark fits at several shifts: the smallest one counts.
        return most < GainDb ? null
            : Enumerable.Range(0, gains.Length).Where(place => gains[place] >= most - NearDb).MinBy(place => Math.Abs(place - Steps));
    }

    private static double Gain(List<double[]> answers, int place)
    {
        bool isBetter = answers.All(answer => answer[place] >= StrongDb && answer[place] >= answer[Steps]);
        return isBetter ? Quantiles.MedianInPlace([.. answers.Select(answer => Math.Min(answer[place] - answer[Steps], 100))]) : double.NegativeInfinity;
    }

    private static int Steps => (int)Math.Round(MostS / StepS);

    private static double ShiftS(int place) => (place - Steps) * StepS;
}
