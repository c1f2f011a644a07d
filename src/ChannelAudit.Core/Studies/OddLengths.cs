using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Studies;

/// <summary>Recordings that are much shorter or longer than most: cut off, not stopped, or of another session.</summary>
/// <remarks>Only where three of four lie within a fifth of the median: else the study has no usual length. Odd is less than 0.7 of the median or more than 1.5 times it. Engineering judgement.</remarks>
internal static class OddLengths
{
    private const int FewestRecordings = 4;
    private const double Alike = 0.2;
    private const double Short = 0.7;
    private const double Long = 1.5;

    /// <summary>One finding a recording.</summary>
    public static IEnumerable<StudyFinding> In(ImmutableArray<StudyRecording> all)
    {
        if (all.Length < FewestRecordings)
        {
            return [];
        }

        double median = Quantiles.Median(all.Select(recording => recording.DurationS).ToArray());
        int alike = all.Count(recording => Math.Abs(recording.DurationS - median) <= Alike * median);
        return 4 * alike < 3 * all.Length
            ? []
            : all.Where(recording => recording.DurationS < Short * median || recording.DurationS > Long * median).Select(recording => new StudyFinding(
                OddKind.Length,
                [recording.Id],
                null,
                string.Create(CultureInfo.InvariantCulture, $"{recording.DurationS:0} s long, {recording.DurationS / median:P0} of the usual {median:0} s"),
                recording.DurationS < median
                    ? "See whether the file was cut off while it was copied or the session was broken off; what is missing can be in no verdict."
                    : "See whether the recording was not stopped, or holds two sessions."));
    }
}
