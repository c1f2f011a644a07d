using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Results;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Studies;

/// <summary>Amplitudes off by a factor near 10, 100 or 1000: a gain, not a face.</summary>
/// <remarks>
/// Three levels of a channel (rest, middle, loud seconds) are each held against the study's median of the same. All three must be off by the same power of ten, within
/// a factor of 2.2, so that a factor below 4.5 never is one; the spectrum must be that of the others within 6 dB, since a gain does not change it and noise does; and two
/// thirds of the others must lie within a factor of 4. Engineering judgement: faces differ by a few times, and not by the same factor at rest and in contractions.
/// </remarks>
internal static class OddLevels
{
    private const double Within = 0.342;
    private const double Alike = 0.602;
    private const double SameSpectrumDb = 6;
    private const string ToDo = "Compare gain and unit in the header with the amplifier's settings of that day; correct them at the source, not by scaling to fit.";

    /// <summary>Recordings or channels with another gain.</summary>
    public static IEnumerable<StudyFinding> In(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual)
    {
        Dictionary<string, Dictionary<string, (int Power, string Words)>> odd = new(StringComparer.Ordinal);
        List<StudyFinding> found = [];
        foreach (string name in usual)
        {
            (string Id, ChannelSignal Signal)[] signals = [.. Comparable(all, name)];
            if (signals.Length < OddRecordings.FewestRecordings)
            {
                continue;
            }

            if (Groups(name, signals) is { } groups)
            {
                found.Add(groups);
                continue;
            }

            foreach ((string id, ChannelSignal signal) in signals)
            {
                if (PowerOf(signal, signals, id) is { } power)
                {
                    odd.TryAdd(id, new Dictionary<string, (int, string)>(StringComparer.Ordinal));
                    odd[id][name] = power;
                }
            }
        }

        return [.. found, .. all.Where(recording => odd.ContainsKey(recording.Id)).SelectMany(recording => Say(recording, usual, odd[recording.Id]))];
    }

    private static IEnumerable<StudyFinding> Say(StudyRecording recording, ImmutableArray<string> usual, Dictionary<string, (int Power, string Words)> odd)
    {
        int own = recording.Channels.Count(channel => usual.Contains(channel.Name, StringComparer.Ordinal));
        if (own > 1 && odd.Count == own && odd.Values.Select(one => one.Power).Distinct().Count() == 1)
        {
            string words = string.Join("; ", odd.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => $"{one.Key} {one.Value.Words}"));
            yield return new StudyFinding(OddKind.Gain, [recording.Id], null, $"all channels {Factor(odd.Values.First().Power)} the others': {words}", ToDo);
            yield break;
        }

        foreach ((string name, (int power, string seen)) in odd.OrderBy(one => one.Key, StringComparer.Ordinal))
        {
            yield return new StudyFinding(OddKind.Gain, [recording.Id], name, $"{Factor(power)} the others': {seen}", ToDo);
        }
    }

    private static IEnumerable<(string Id, ChannelSignal Signal)> Comparable(ImmutableArray<StudyRecording> all, string name)
    {
        (string Id, ChannelSignal Signal)[] measured =
            [.. all.Select(recording => (recording.Id, recording.Find(name)?.Signal!)).Where(one => one.Item2 is { LevelLow: > 0, LevelMiddle: > 0, LevelHigh: > 0 })];
        string unit = measured.GroupBy(one => one.Signal.Unit, StringComparer.Ordinal)
            .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal)
            .FirstOrDefault()?.Key ?? "uV";
        return measured.Where(one => string.Equals(one.Signal.Unit, unit, StringComparison.Ordinal));
    }

    private static (int Power, string Words)? PowerOf(ChannelSignal signal, (string Id, ChannelSignal Signal)[] signals, string id)
    {
        double[] own = Logs(signal);
        double[] centre = Centre(signals);
        double[] others = [.. signals.Where(one => !string.Equals(one.Id, id, StringComparison.Ordinal)).Select(one => Logs(one.Signal)[1])];
        if (3 * others.Count(level => Math.Abs(level - centre[1]) <= Alike) < 2 * others.Length
            || CommonPower(own, centre) is not { } power
            || !HasSpectrumOfMost(signal, signals))
        {
            return null;
        }

        string unit = string.Equals(signal.Unit, "uV", StringComparison.Ordinal) ? " (\u00B5V)" : string.Empty;
        return (power, $"{Level(own[0])} against {Level(centre[0])} at rest, {Level(own[2])} against {Level(centre[2])} in loud seconds{unit}");
    }

    private static bool HasSpectrumOfMost(ChannelSignal signal, (string Id, ChannelSignal Signal)[] signals)
    {
        double[] all = [.. signals.Select(one => one.Signal.HighDb).OfType<double>()];
        return signal.HighDb is not { } own || all.Length == 0 || Math.Abs(own - Quantiles.Median(all)) <= SameSpectrumDb;
    }

    /// <summary>The power of ten by which all three levels are off; null when they are not, or not by one.</summary>
    private static int? CommonPower(double[] own, double[] centre)
    {
        int power = (int)Math.Round(own[1] - centre[1]);
        bool isCommon = Enumerable.Range(0, own.Length).All(i => Math.Abs(own[i] - centre[i] - power) <= Within);
        return isCommon && Math.Abs(power) is >= 1 and <= 3 ? power : null;
    }

    // Half of a study with another gain: nobody is odd, and the two halves are said.
    private static StudyFinding? Groups(string name, (string Id, ChannelSignal Signal)[] signals)
    {
        (string Id, ChannelSignal Signal)[] sorted = [.. signals.OrderBy(one => one.Signal.LevelMiddle).ThenBy(one => one.Id, StringComparer.Ordinal)];
        double[] middle = [.. sorted.Select(one => Logs(one.Signal)[1])];
        int split = Enumerable.Range(1, sorted.Length - 1).MaxBy(i => middle[i] - middle[i - 1]);
        (string Id, ChannelSignal Signal)[] low = sorted[..split];
        (string Id, ChannelSignal Signal)[] high = sorted[split..];
        int fewest = Math.Min(low.Length, high.Length);
        bool areAlike = middle[split - 1] - middle[0] <= Alike && middle[^1] - middle[split] <= Alike;
        if (fewest < 2 || 3 * fewest < sorted.Length || !areAlike || CommonPower(Centre(high), Centre(low)) is not { } power)
        {
            return null;
        }

        (string Id, ChannelSignal Signal)[] named = high.Length <= low.Length ? high : low;
        return new StudyFinding(
            OddKind.Gain,
            [.. named.Select(one => one.Id).Order(StringComparer.Ordinal)],
            name,
            string.Create(
                CultureInfo.InvariantCulture, $"two groups, {high.Length} of {sorted.Length} recordings {Factor(power)} the other {low.Length}; named is the smaller group"),
            Vote.Groups);
    }

    private static double[] Centre((string Id, ChannelSignal Signal)[] signals) =>
        [.. Enumerable.Range(0, 3).Select(i => Quantiles.Median(signals.Select(one => Logs(one.Signal)[i]).ToArray()))];

    private static double[] Logs(ChannelSignal signal) =>
        [Math.Log10(signal.LevelLow!.Value), Math.Log10(signal.LevelMiddle!.Value), Math.Log10(signal.LevelHigh!.Value)];

    private static string Level(double log) => Rounded(Math.Pow(10, log)).ToString("0.######", CultureInfo.InvariantCulture);

    // To three digits, and never with an exponent: 1790, 17.9, 0.00179.
    private static double Rounded(double value)
    {
        double unit = Math.Pow(10, Math.Floor(Math.Log10(value)) - 2);
        return Math.Round(value / unit) * unit;
    }

    private static string Factor(int power) => power > 0
        ? string.Create(CultureInfo.InvariantCulture, $"about {Math.Pow(10, power):0} times")
        : string.Create(CultureInfo.InvariantCulture, $"about 1/{Math.Pow(10, -power):0} of");
}
