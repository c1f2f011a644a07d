using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>Everything that recordings can be put together by.</summary>
public static class TrendSubjects
{
    /// <summary>The word for all recordings.</summary>
    public const string All = "all";

    /// <summary>The word for the lab of recordings whose setup names none.</summary>
    public const string UnnamedLab = "unnamed";

    /// <summary>The subjects: all, then labs, amplifiers, sites and electrodes, each by lab and name in ordinal order. Of a single lab all recordings are the lab: it stands once, by its name if it has one.</summary>
    public static ImmutableArray<TrendSubject> Of(ImmutableArray<TrendSession> sessions)
    {
        string?[] labs = [.. sessions.Select(session => session.Lab).Distinct(StringComparer.Ordinal)];
        HashSet<TrendSubject> found = labs is [not null] ? [] : [new TrendSubject(TrendBy.Archive, null, All)];
        found.UnionWith(labs.Where(lab => labs.Length > 1 || lab is not null).Select(lab => new TrendSubject(TrendBy.Lab, lab, lab ?? UnnamedLab)));
        foreach (TrendSession session in sessions)
        {
            if (session.Amplifier is { } amplifier)
            {
                found.Add(new TrendSubject(TrendBy.Amplifier, session.Lab, amplifier));
            }

            foreach (TrendChannel channel in session.Channels)
            {
                found.Add(new TrendSubject(TrendBy.Site, session.Lab, channel.Site));
                found.UnionWith(channel.Electrodes.Select(electrode => new TrendSubject(TrendBy.Electrode, session.Lab, electrode)));
            }
        }

        return [.. found.OrderBy(one => one.By).ThenBy(one => one.Lab, StringComparer.Ordinal).ThenBy(one => one.Name, StringComparer.Ordinal)];
    }
}
