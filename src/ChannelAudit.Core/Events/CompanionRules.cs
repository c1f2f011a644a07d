using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;

namespace ChannelAudit.Events;

/// <summary>How a recording and its companions are joined.</summary>
internal static class CompanionRules
{
    private const double RateTolerance = 1e-6;

    /// <summary>See <see cref="RecordingCompanions.ApplyTo"/>.</summary>
    public static Recording Apply(RecordingCompanions companions, Recording recording)
    {
        ImmutableArray<(Channel Channel, BidsChannel? Row)> pairs = Pair(recording.Channels, companions.Channels);
        ImmutableArray<Warning>.Builder warnings = ImmutableArray.CreateBuilder<Warning>();
        warnings.AddRange(recording.Warnings);
        warnings.AddRange(companions.Warnings);
        if (companions.ChannelsPath is { } path && !companions.Channels.IsEmpty)
        {
            string file = Path.GetFileName(path);
            WarnOfNames(file, pairs, companions.Channels, warnings);
            WarnOfUnits(file, pairs, warnings);
            WarnOfRates(file, [.. pairs.Select(pair => (pair.Channel, pair.Row?.SamplingHz))], warnings);
        }

        if (companions.SidecarPath is { } sidecar)
        {
            WarnOfRates(Path.GetFileName(sidecar), [.. recording.Channels.Select(channel => (channel, companions.SamplingHz))], warnings);
        }

        return new Recording
        {
            FileName = recording.FileName,
            Format = recording.Format,
            Channels =
            [
                .. pairs.Select(pair => pair.Row is { } row ? Join(pair.Channel, row) : pair.Channel)
                    .Select(channel => channel with { Prefilter = channel.Prefilter with { Software = companions.SoftwareFilters } }),
            ],
            Annotations = recording.Annotations,
            Warnings = warnings.ToImmutable(),
            DurationS = recording.DurationS,
            Samples = recording.Samples,
        };
    }

    // By the label as it stands in the file; the second of equal labels takes the second row of that name.
    private static ImmutableArray<(Channel Channel, BidsChannel? Row)> Pair(ImmutableArray<Channel> channels, ImmutableArray<BidsChannel> rows)
    {
        ILookup<string, BidsChannel> byName = rows.ToLookup(row => row.Name, StringComparer.Ordinal);
        Dictionary<string, int> used = new(StringComparer.Ordinal);
        ImmutableArray<(Channel, BidsChannel?)>.Builder pairs = ImmutableArray.CreateBuilder<(Channel, BidsChannel?)>(channels.Length);
        foreach (Channel channel in channels)
        {
            string name = byName.Contains(channel.RawLabel.Trim()) ? channel.RawLabel.Trim() : channel.Label;
            int position = used.GetValueOrDefault(name);
            used[name] = position + 1;
            pairs.Add((channel, byName[name].ElementAtOrDefault(position)));
        }

        return pairs.ToImmutable();
    }

    private static Channel Join(Channel channel, BidsChannel row)
    {
        bool isOther = row.Type is not null and not "EMG";
        return channel with
        {
            NotAudited = channel.NotAudited ?? (isOther ? $"type {row.Type} in the channels table" : null),
            Prefilter = channel.Prefilter with
            {
                HighpassHz = channel.Prefilter.HighpassHz ?? row.LowCutoffHz,
                LowpassHz = channel.Prefilter.LowpassHz ?? row.HighCutoffHz,
                NotchesHz = channel.Prefilter.NotchesHz.IsDefaultOrEmpty ? row.NotchesHz : channel.Prefilter.NotchesHz,
            },
        };
    }

    private static void WarnOfNames(
        string file, ImmutableArray<(Channel Channel, BidsChannel? Row)> pairs, ImmutableArray<BidsChannel> rows, ImmutableArray<Warning>.Builder warnings)
    {
        ImmutableArray<string> unmatched = [.. pairs.Where(pair => pair.Row is null && pair.Channel.NotAudited is null).Select(pair => pair.Channel.Label)];
        if (!unmatched.IsEmpty)
        {
            warnings.Add(new Warning(file, "column name", $"no row for {Listed(unmatched)}"));
        }

        HashSet<BidsChannel> taken = new(pairs.Select(pair => pair.Row).OfType<BidsChannel>(), ReferenceEqualityComparer.Instance);
        ImmutableArray<string> left = [.. rows.Where(row => !taken.Contains(row)).Select(row => row.Name)];
        if (!left.IsEmpty)
        {
            warnings.Add(new Warning(file, "column name", $"no such channel in the recording: {Listed(left)}"));
        }
    }

    private static void WarnOfUnits(string file, ImmutableArray<(Channel Channel, BidsChannel? Row)> pairs, ImmutableArray<Warning>.Builder warnings)
    {
        var conflicts = pairs
            .Where(pair => pair.Row?.Units is not null && pair.Channel.FileUnit.Trim().Length > 0 && !SameUnit(pair.Channel.FileUnit, pair.Row.Units))
            .GroupBy(pair => (File: pair.Channel.FileUnit.Trim(), Table: pair.Row!.Units!));
        foreach (var conflict in conflicts)
        {
            string names = Listed([.. conflict.Select(pair => pair.Channel.Label)]);
            warnings.Add(new Warning(file, "column units", $"{names}: the recording says {conflict.Key.File}, the table {conflict.Key.Table}; the recording's own unit is used"));
        }
    }

    private static void WarnOfRates(string file, ImmutableArray<(Channel Channel, double? StatedHz)> pairs, ImmutableArray<Warning>.Builder warnings)
    {
        var conflicts = pairs
            .Where(pair => pair.Channel.NotAudited is null && pair.StatedHz is { } stated && Math.Abs(pair.Channel.Rate.Value - stated) > RateTolerance * stated)
            .GroupBy(pair => (Own: pair.Channel.Rate, Stated: pair.StatedHz!.Value));
        foreach (var conflict in conflicts)
        {
            string names = Listed([.. conflict.Select(pair => pair.Channel.Label)]);
            warnings.Add(new Warning(file, "sampling frequency", string.Create(
                CultureInfo.InvariantCulture,
                $"{names}: the recording says {conflict.Key.Own} Hz, this file {conflict.Key.Stated} Hz; the recording's own rate is used")));
        }
    }

    // The micro sign has two characters, and u stands for both.
    private static bool SameUnit(string a, string b)
    {
        static string Plain(string unit) => unit.Trim().Replace('µ', 'u').Replace('μ', 'u');
        return string.Equals(Plain(a), Plain(b), StringComparison.Ordinal);
    }

    private static string Listed(ImmutableArray<string> names) => names.Length <= 4
        ? string.Join(", ", names)
        : string.Create(CultureInfo.InvariantCulture, $"{names[0]}, {names[1]}, {names[2]} and {names.Length - 3} more");
}
