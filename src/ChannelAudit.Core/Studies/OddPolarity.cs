using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Studies;

/// <summary>A channel upside down, where that can be seen.</summary>
/// <remarks>
/// EMG itself has no up and down. Two things have: slow deflections of one kind, such as blinks at the eye (ten and more, nine of ten to one side), and what two channels share
/// (a correlation of 0.1 and more). Deflections count only where no high-pass above 1 Hz is stated and the slow signal is
/// within 10 dB of the usual. Three
/// recordings at least must show the same side or sign, and three of four of those that show any. Where neither is there, nothing is said.
/// </remarks>
internal static class OddPolarity
{
    private const int FewestSwings = 10;
    private const double OneSided = 0.8;
    private const int FewestAlike = 3;
    private const double HighestHighpassHz = 1;
    private const double AlikeDb = 10;
    private const string ToDo = "See whether the two electrodes of the site were exchanged, or the file inverted. "
        + "Rectified amplitudes do not change; correlations between sites, latencies of single deflections and averages do.";

    /// <summary>Channels whose sign is other than that of most recordings.</summary>
    public static IEnumerable<StudyFinding> In(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual)
    {
        HashSet<(string Id, string Name)> seen = [];
        List<StudyFinding> found = [];
        foreach (string name in usual)
        {
            double[] low = [.. all.Select(recording => recording.Find(name)?.Signal?.LowDb).OfType<double>()];
            double? usualLow = low.Length == 0 ? null : Quantiles.Median(low);
            (string Id, int Side)[] sides = [.. all.Select(recording => (recording.Id, SideOf(recording.Find(name), usualLow))).Where(one => one.Item2 != 0)];
            foreach (string id in Against(sides))
            {
                seen.Add((id, name));
                string side = sides.First(one => string.Equals(one.Id, id, StringComparison.Ordinal)).Side > 0 ? "up" : "down";
                found.Add(new StudyFinding(OddKind.Polarity, [id], name, $"slow deflections go {side}, in {InOthers(sides, id)} to the other side: upside down", ToDo));
            }
        }

        var turned = OddPairs(all, usual).GroupBy(one => one.Id, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal);
        foreach (var ofRecording in turned)
        {
            found.AddRange(Blame(ofRecording.Key, [.. ofRecording], seen));
        }

        return found;
    }

    private static IEnumerable<(StudyPair Pair, string Id, string Others)> OddPairs(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual)
    {
        var signs = all.SelectMany(recording => recording.Pairs.Select(pair => (recording.Id, Pair: pair)))
            .Where(one => usual.Contains(one.Pair.A, StringComparer.Ordinal) && usual.Contains(one.Pair.B, StringComparer.Ordinal))
            .GroupBy(one => (one.Pair.A, one.Pair.B));
        foreach (var ofPair in signs)
        {
            (string Id, int Side)[] sides = [.. ofPair.Select(one => (one.Id, one.Pair.Sign))];
            foreach (string id in Against(sides))
            {
                yield return (ofPair.First(one => string.Equals(one.Id, id, StringComparison.Ordinal)).Pair, id, InOthers(sides, id));
            }
        }
    }

    // One channel upside down turns every pair that it is in; of a single pair nobody can say which of the two it is.
    private static IEnumerable<StudyFinding> Blame(string id, (StudyPair Pair, string Id, string Others)[] odd, HashSet<(string Id, string Name)> seen)
    {
        if (odd.All(one => seen.Contains((id, one.Pair.A)) || seen.Contains((id, one.Pair.B))))
        {
            yield break;
        }

        string[] inAll = [.. new[] { odd[0].Pair.A, odd[0].Pair.B }.Where(name => odd.All(one => Has(one.Pair, name)))];
        string pairs = string.Join("; ", odd.Select(one => string.Create(
            CultureInfo.InvariantCulture, $"{one.Pair.A} and {one.Pair.B} share with {(one.Pair.Sign > 0 ? "equal" : "opposite")} sign, in {one.Others} with the other")));
        yield return inAll.Length == 1 && odd.Length > 1
            ? new StudyFinding(OddKind.Polarity, [id], inAll[0], $"{pairs}: {inAll[0]} is upside down", ToDo)
            : new StudyFinding(OddKind.Polarity, [id], null, $"{pairs}: one of these is upside down, which one cannot be seen", ToDo);
    }

    private static IEnumerable<string> Against((string Id, int Side)[] sides)
    {
        int up = sides.Count(one => one.Side > 0);
        int most = Math.Max(up, sides.Length - up);
        int usual = 2 * up > sides.Length ? 1 : -1;
        return most < FewestAlike || 4 * most < 3 * sides.Length ? [] : sides.Where(one => one.Side != usual).Select(one => one.Id);
    }

    private static string InOthers((string Id, int Side)[] sides, string id)
    {
        int own = sides.First(one => string.Equals(one.Id, id, StringComparison.Ordinal)).Side;
        return string.Create(CultureInfo.InvariantCulture, $"{sides.Count(one => one.Side != own)} of {sides.Length} recordings");
    }

    // Behind a high-pass a blink has its own reverse beside it, and the reverse may be the larger one.
    private static int SideOf(StudyChannel? channel, double? usualLow)
    {
        if (channel?.Signal is not { } signal || signal.SwingsUp + signal.SwingsDown < FewestSwings
            || signal.HighpassHz > HighestHighpassHz || (signal.LowDb is { } low && usualLow is { } usual && Math.Abs(low - usual) > AlikeDb))
        {
            return 0;
        }

        double share = (double)(signal.SwingsUp - signal.SwingsDown) / (signal.SwingsUp + signal.SwingsDown);
        return share >= OneSided ? 1 : share <= -OneSided ? -1 : 0;
    }

    private static bool Has(StudyPair pair, string name) =>
        string.Equals(pair.A, name, StringComparison.Ordinal) || string.Equals(pair.B, name, StringComparison.Ordinal);
}
