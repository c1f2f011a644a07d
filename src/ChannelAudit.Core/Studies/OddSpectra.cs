using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Results;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Studies;

/// <summary>Filters as the spectra show them: slow signal and high frequencies against the middle of the band.</summary>
/// <remarks>
/// 3 to 8 Hz and 300 to 450 Hz against 80 to 150 Hz, each in what three of four seconds exceed, so that motion and contractions do not count. Tension and contact
/// move these by some 10 dB from face to face; odd is what lies 18 dB (low) or 15 dB (high) from the median while two thirds of the others lie within 8 dB of it.
/// A second-order high-pass of 20 Hz takes 24 dB at 5 Hz. Engineering judgement.
/// </remarks>
internal static class OddSpectra
{
    private const double LowDb = 18;
    private const double HighDb = 15;
    private const double AlikeDb = 8;

    /// <summary>Recordings or channels whose spectra speak of another filter.</summary>
    public static IEnumerable<StudyFinding> In(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual) =>
    [
        .. Ask(all, usual, signal => signal.LowDb, LowDb, (
            "3 to 8 Hz", "a higher high-pass than the others", "a lower high-pass than the others or none, or motion throughout")),
        .. Ask(all, usual, signal => signal.HighDb, HighDb, (
            "300 to 450 Hz", "a lower low-pass than the others", "a higher low-pass than the others or none, or white noise")),
    ];

    private static IEnumerable<StudyFinding> Ask(
        ImmutableArray<StudyRecording> all,
        ImmutableArray<string> usual,
        Func<ChannelSignal, double?> value,
        double limit,
        (string Band, string Less, string More) words)
    {
        (string Id, string Name, double Off, double Own)[] odd = [.. usual.SelectMany(name => Odd(all, name, value, limit))];
        foreach (StudyRecording recording in all)
        {
            (string Id, string Name, double Off, double Own)[] mine = [.. odd.Where(one => string.Equals(one.Id, recording.Id, StringComparison.Ordinal))];
            bool isWhole = mine.Length > 1 && mine.Length == recording.Channels.Count(channel => usual.Contains(channel.Name, StringComparer.Ordinal))
                && mine.Select(one => Math.Sign(one.Off)).Distinct().Count() == 1;
            foreach ((_, string name, double off, double own) in isWhole ? mine.Take(1) : mine)
            {
                string others = isWhole ? $" ({name}; the other channels alike)" : string.Empty;
                yield return new StudyFinding(
                    OddKind.FilterMeasured,
                    [recording.Id],
                    isWhole ? null : name,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{words.Band} against 80 to 150 Hz: {own:0} dB, {Math.Abs(off):0} dB {(off < 0 ? "less" : "more")} than the median recording{others}: ")
                        + (off < 0 ? words.Less : words.More),
                    "Compare the amplifier's settings of that day with the others'; filter all recordings to one band before comparing.");
            }
        }
    }

    private static IEnumerable<(string Id, string Name, double Off, double Own)> Odd(
        ImmutableArray<StudyRecording> all, string name, Func<ChannelSignal, double?> value, double limit)
    {
        (string Id, double Value)[] values =
        [
            .. all.Select(recording => (recording.Id, recording.Find(name)?.Signal is { } signal ? value(signal) : null))
                .Where(one => one.Item2 is not null)
                .Select(one => (one.Id, one.Item2!.Value)),
        ];
        if (values.Length < OddRecordings.FewestRecordings)
        {
            yield break;
        }

        double median = Quantiles.Median(values.Select(one => one.Value).ToArray());
        foreach ((string id, double own) in values)
        {
            int alike = values.Count(other => !string.Equals(other.Id, id, StringComparison.Ordinal) && Math.Abs(other.Value - median) <= AlikeDb);
            if (Math.Abs(own - median) >= limit && 3 * alike >= 2 * (values.Length - 1))
            {
                yield return (id, name, own - median, own);
            }
        }
    }
}
