using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Trends;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Trends;

/// <summary>Reads what is compared over time out of audits: results one by one, a few numbers kept of each; no recording is opened.</summary>
public static class TrendReading
{
    /// <summary>Finds the audits at and below some places, each once, in the order of the places and below each in ordinal order.</summary>
    /// <exception cref="ChannelAuditException">When a place has none.</exception>
    public static ImmutableArray<string> Find(IEnumerable<string> places)
    {
        List<string> folders = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (string place in places)
        {
            string[] found = Below(place);
            if (found.Length == 0)
            {
                throw TrendErrors.NoAudit(place);
            }

            folders.AddRange(found.Where(folder => seen.Add(Path.GetFullPath(folder))));
        }

        return [.. folders];
    }

    /// <summary>What is kept of the recordings of an audit, in its order.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="cancellation">Checked for every recording.</param>
    public static IEnumerable<(string Sha256, TrendSession Session)> Of(StoredAudit audit, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(audit);
        StudySetup setup = audit.Inputs.FirstOrDefault(input => string.Equals(input.Role, RunInput.Setup, StringComparison.Ordinal)) is { } kept
            ? SetupFile.Parse(Encoding.UTF8.GetString(kept.Bytes.AsSpan()).TrimStart('\uFEFF'), kept.FileName)
            : StudySetup.Empty;
        foreach (StoredRecording recording in audit.Recordings)
        {
            cancellation.ThrowIfCancellationRequested();
            yield return (recording.Sha256, Session(audit.ResultOf(recording), setup, recording.Path));
        }
    }

    /// <summary>Refuses recordings of which none has a day.</summary>
    /// <exception cref="ChannelAuditException">When none has one.</exception>
    public static void RequireDays(TrendReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Sessions.IsEmpty)
        {
            throw TrendErrors.NoDay(report.WithoutDay);
        }
    }

    /// <summary>One person's recordings beside the lab's usual range.</summary>
    /// <exception cref="ChannelAuditException">When no setup allows it, or no recording names the person.</exception>
    public static OwnSetups Own(TrendReport report, string technician)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Sessions.All(session => session.Technician is null)
            ? throw TrendErrors.NoPeople(technician)
            : OwnSetups.Of(report, technician) ?? throw TrendErrors.NoSuchTechnician(technician);
    }

    private static string[] Below(string place)
    {
        try
        {
            return Directory.Exists(place)
                ? [.. Directory.EnumerateFiles(place, PreviousAudit.FileName, SearchOption.AllDirectories).Select(file => Path.GetDirectoryName(file)!)
                    .Where(folder => !folder.Split(Path.DirectorySeparatorChar).Contains(".unfinished", StringComparer.Ordinal)).Order(StringComparer.Ordinal)]
                : [];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw TrendErrors.CannotSearch(place, fault);
        }
    }

    private static TrendSession Session(RecordingResult result, StudySetup study, string path)
    {
        StudySetup setup = study.For(path);
        return new TrendSession
        {
            Id = result.Id,
            Day = study.DayOf(path),
            Lab = setup.Recording.Lab,
            Amplifier = setup.Recording.Amplifier,
            Technician = study.ShowsPeople ? setup.Recording.Technician : null,
            BridgedPairs = result.Channels.SelectMany(channel => channel.Findings)
                .Where(IsBridge).Select(finding => string.Join('\n', finding.Channels.Order(StringComparer.Ordinal))).Distinct(StringComparer.Ordinal).Count(),
            Channels = [.. result.Channels.Select(channel => Channel(channel, setup, result.Impedance))],
        };
    }

    private static TrendChannel Channel(ChannelResult channel, StudySetup setup, ImpedanceReport? report)
    {
        SiteSetup? site = setup.Sites.FirstOrDefault(one => string.Equals(one.Name, channel.Name, StringComparison.Ordinal));
        bool isBridged = channel.Reasons.Contains(ReasonCode.Bridge, StringComparer.Ordinal) || channel.Findings.Any(IsBridge);
        bool isOpen = channel.NotAssessed.Any(open => string.Equals(open.Reason, ReasonCode.Bridge, StringComparison.Ordinal));
        SiteImpedance? readings = report is { IsUnitDoubted: false } ? report.Site(channel.Name) : null;
        double[] pair = Before(readings, ImpedancePair.AToB);
        SolvedImpedance? solved = Solved(readings, pair);
        return new TrendChannel
        {
            Site = channel.Name,
            Electrodes = site?.Electrodes ?? [],
            IsNotPassed = channel.Verdict != Grade.Pass,
            RestUv = Measure(channel, TrendMeasure.Rest.Code),
            MainsUv = Measure(channel, TrendMeasure.Mains.Code),
            IsBridged = isBridged ? true : isOpen ? null : false,
            PairKohm = pair.Length == 0 ? null : pair[^1],
            FirstKohm = solved?.AKohm,
            SecondKohm = solved?.BKohm,
            FallPercent = pair.Length < 2 || pair[0] == 0 ? null : 100 * (1 - (pair[^1] / pair[0])),
        };
    }

    private static bool IsBridge(Finding finding) => finding.Grade != Grade.Pass && string.Equals(finding.Reason, ReasonCode.Bridge, StringComparison.Ordinal);

    private static double? Measure(ChannelResult channel, string name) =>
        channel.Measures.Select(measure => measure.Value).Where(value => string.Equals(value.Measure, name, StringComparison.Ordinal)).Select(value => value.Value).FirstOrDefault();

    // Readings after the session say how the contacts have dried, not how they were prepared.
    private static double[] Before(SiteImpedance? site, ImpedancePair pair) =>
        [.. site?[pair].Course?.Readings.Where(reading => !reading.IsAfter).Select(reading => reading.Kohm) ?? []];

    private static SolvedImpedance? Solved(SiteImpedance? site, double[] pair)
    {
        if (site is null || site.IsDoubted || pair.Length == 0)
        {
            return null;
        }

        double[] first = Before(site, ImpedancePair.AToGround);
        double[] second = Before(site, ImpedancePair.BToGround);
        if (first.Length == 0 || second.Length == 0)
        {
            return null;
        }

        SolvedImpedance solved = SolvedImpedance.Of(new ImpedanceTriple(pair[^1], first[^1], second[^1]));
        return solved is { AKohm: > 0, BKohm: > 0 } ? solved : null;
    }
}
