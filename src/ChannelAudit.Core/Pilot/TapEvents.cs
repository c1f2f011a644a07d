using System.Collections.Immutable;
using ChannelAudit.Events;

namespace ChannelAudit.Pilot;

/// <summary>The events of a recording in which somebody tapped lead wires.</summary>
/// <param name="Taps">Site and stretch in seconds, in file order.</param>
/// <param name="Unknown">Labels that speak of taps on no known site.</param>
internal sealed record TapEvents(ImmutableArray<(string Site, decimal FromS, decimal ToS)> Taps, ImmutableArray<string> Unknown)
{
    /// <summary>How labels of taps begin; the site's name follows.</summary>
    public const string Word = "tap ";

    // Long enough for a few taps when only an instant was marked.
    private const decimal InstantS = 4;

    /// <summary>Finds them.</summary>
    /// <param name="events">All events.</param>
    /// <param name="sites">Names of the sites.</param>
    public static TapEvents Of(ImmutableArray<RecordedEvent> events, ImmutableArray<string> sites)
    {
        var taps = ImmutableArray.CreateBuilder<(string Site, decimal FromS, decimal ToS)>();
        var unknown = ImmutableArray.CreateBuilder<string>();
        foreach (RecordedEvent one in events)
        {
            if (one.Label?.Trim() is not { } label || !label.StartsWith(Word, StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            string name = label[Word.Length..].Trim();
            if (sites.FirstOrDefault(site => string.Equals(site, name, StringComparison.OrdinalIgnoreCase)) is { } known)
            {
                taps.Add((known, one.OnsetS, one.OnsetS + (one.DurationS is > 0 and { } lasts ? lasts : InstantS)));
            }
            else
            {
                unknown.Add(label);
            }
        }

        return new TapEvents(taps.ToImmutable(), unknown.ToImmutable());
    }
}
