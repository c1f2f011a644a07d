using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Impedance;

/// <summary>Holds readings against the channels of a recording.</summary>
internal static class SiteReadings
{
    /// <summary>Judges the readings of a recording whose channels are known.</summary>
    /// <param name="log">Readings of this recording.</param>
    /// <param name="setup">Names the sites.</param>
    /// <param name="channels">Names of the audited channels, as tables show them.</param>
    /// <param name="recordingId">The recording's id, for messages.</param>
    /// <exception cref="ChannelAuditException">When no setup names the sites and a site of the readings is no channel: its grade would be lost.</exception>
    public static ImpedanceReport Of(ImpedanceLog log, StudySetup setup, IEnumerable<string> channels, string recordingId)
    {
        ImpedanceReport report = ImpedanceReport.Of(log, setup);
        ImmutableArray<string> names = [.. channels];
        if (setup.Sites.IsEmpty
            && log.Readings.OrderBy(reading => reading.Line).FirstOrDefault(reading => Stranger(reading, names) is not null) is { } first)
        {
            throw ImpedanceErrors.NoChannel(log.FileName, first.Line, Stranger(first, names)!, recordingId, names);
        }

        return report;
    }

    private static string? Stranger(LoggedReading reading, ImmutableArray<string> channels) => new[] { reading.From, reading.To }
        .Where(end => !end.IsGround && !channels.Contains(end.Site, StringComparer.Ordinal)).Select(end => end.Site).FirstOrDefault();
}
