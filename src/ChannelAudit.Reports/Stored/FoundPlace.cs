using System.Collections.Immutable;
using ChannelAudit.Lists;
using ChannelAudit.Results;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Stored;

/// <summary>What a line of a person's list means in a recording.</summary>
/// <param name="Channels">Its channels, in file order; empty when it means nothing there.</param>
/// <param name="Trial">Its trial; null for whole channels.</param>
/// <param name="Cause">Why it means nothing, as a clause; null when it does.</param>
internal sealed record FoundPlace(ImmutableArray<ChannelResult> Channels, int? Trial, string? Cause)
{
    /// <summary>Looks a line up. Channels are found by name, then by label, then with other capitalisation.</summary>
    public static FoundPlace Of(ListedPlace place, RecordingResult recording)
    {
        ImmutableArray<ChannelResult> channels = recording.Channels;
        if (place.Channel is { } name)
        {
            if (Channel(recording, name) is not { } channel)
            {
                string near = NearestName.Of(name, recording.Channels.Select(one => one.Name)) is { } nearest
                    ? $"did you mean \"{OneLine.Of(nearest)}\"?"
                    : $"it has {OneLine.List(recording.Channels.Select(one => one.Name))}";
                return None($"the recording has no channel \"{OneLine.Of(name)}\"; {near}");
            }

            channels = [channel];
        }

        if (place.Trial is null)
        {
            return new FoundPlace(channels, null, null);
        }

        if (place.TrialNumber is not { } number)
        {
            return None($"\"{OneLine.Of(place.Trial)}\" is no number of a trial; trial 3 may be written 3, 3.0 or 3,0");
        }

        channels = [.. channels.Where(channel => channel.Cells.Any(cell => cell.Trial == number))];
        return channels.IsEmpty
            ? None(FormattableString.Invariant($"there is no trial {number}; the recording has {recording.Trials.Length}"))
            : new FoundPlace(channels, number, null);
    }

    private static FoundPlace None(string cause) => new([], null, cause);

    private static ChannelResult? Channel(RecordingResult recording, string name)
    {
        // Our own tables put an apostrophe before names that a spreadsheet would run.
        string[] names = name.StartsWith('\'') ? [name, name[1..]] : [name];
        foreach (StringComparison comparison in new[] { StringComparison.Ordinal, StringComparison.OrdinalIgnoreCase })
        {
            ChannelResult? found = recording.Channels.FirstOrDefault(channel => names.Any(one => string.Equals(channel.Name, one, comparison)))
                ?? recording.Channels.FirstOrDefault(channel => names.Any(one => string.Equals(channel.Label, one, comparison)));
            if (found is not null)
            {
                return found;
            }
        }

        return null;
    }
}
