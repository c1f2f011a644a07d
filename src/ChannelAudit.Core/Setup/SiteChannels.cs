using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Setup;

/// <summary>Finds each site's channel in a recording.</summary>
public static class SiteChannels
{
    /// <summary>The position of each site's channel among the labels.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="labels">Labels as they stand in the recording, in file order, repeats included.</param>
    /// <param name="recordingFile">The recording's name, for messages.</param>
    /// <returns>One index into <paramref name="labels"/> for each site, in the setup's order.</returns>
    /// <remarks>
    /// A label that stands once is named as it is; of a repeated label <c>EMG</c> the first is <c>EMG#1</c>, the second
    /// <c>EMG#2</c>. A blank one is named by its place, <c>channel 3</c>. Case counts, since EDF labels may differ by case alone.
    /// </remarks>
    /// <exception cref="ChannelAuditException">When a site's channel is not there, is ambiguous, or is another site's.</exception>
    public static ImmutableArray<int> Locate(StudySetup setup, IEnumerable<string> labels, string recordingFile)
    {
        ImmutableArray<string> all = WithoutBlanks(labels);
        var taken = new Dictionary<int, SiteSetup>();
        ImmutableArray<int>.Builder positions = ImmutableArray.CreateBuilder<int>(setup.Sites.Length);
        foreach (SiteSetup site in setup.Sites)
        {
            int position = LocateOne(setup, site, all, recordingFile);
            if (taken.TryGetValue(position, out SiteSetup? owner))
            {
                throw SetupErrors.OneChannelTwoSites(setup, owner, site, recordingFile);
            }

            taken.Add(position, site);
            positions.Add(position);
        }

        return positions.MoveToImmutable();
    }

    /// <summary>How a setup names each channel: its label, and its position where the label stands more than once.</summary>
    /// <param name="labels">Labels as they stand in the recording, in file order, repeats included.</param>
    public static ImmutableArray<string> Names(IEnumerable<string> labels)
    {
        ImmutableArray<string> all = WithoutBlanks(labels);
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        ImmutableArray<string>.Builder names = ImmutableArray.CreateBuilder<string>(all.Length);
        foreach (string label in all)
        {
            int number = seen[label] = seen.GetValueOrDefault(label) + 1;
            bool isRepeated = Positions(all, label).Length > 1;
            names.Add(isRepeated ? string.Create(CultureInfo.InvariantCulture, $"{label}#{number}") : label);
        }

        return names.MoveToImmutable();
    }

    private static int LocateOne(StudySetup setup, SiteSetup site, ImmutableArray<string> labels, string recordingFile)
    {
        int[] same = Positions(labels, site.Channel);
        if (same.Length == 1)
        {
            return same[0];
        }

        if (same.Length > 1)
        {
            throw SetupErrors.AmbiguousChannel(setup, site, recordingFile, same.Length);
        }

        int mark = site.Channel.LastIndexOf('#');
        if (mark > 0 && int.TryParse(site.Channel.AsSpan(mark + 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number))
        {
            int[] repeated = Positions(labels, site.Channel[..mark]);
            if (repeated.Length > 1 && number >= 1 && number <= repeated.Length)
            {
                return repeated[number - 1];
            }
        }

        throw SetupErrors.NoSuchChannel(setup, site, recordingFile, Names(labels));
    }

    private static int[] Positions(ImmutableArray<string> labels, string label) =>
        [.. Enumerable.Range(0, labels.Length).Where(index => string.Equals(labels[index], label, StringComparison.Ordinal))];

    private static ImmutableArray<string> WithoutBlanks(IEnumerable<string> labels) =>
        [.. labels.Select((label, index) => label.Length > 0 ? label : string.Create(CultureInfo.InvariantCulture, $"channel {index + 1}"))];
}
