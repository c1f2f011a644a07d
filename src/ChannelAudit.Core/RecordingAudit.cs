using System.Security.Cryptography;
using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit;

/// <summary>From a file on disk to its result: opens it, finds what stands beside it, chooses the trials, and audits.</summary>
public static class RecordingAudit
{
    /// <summary>Audits a file.</summary>
    /// <param name="entry">The file and its id.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="criteria">Limits in force.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <param name="cancellation">Checked for every block of samples.</param>
    /// <param name="withViews">Whether pictures of channels will be drawn.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read, or setup or events do not fit it.</exception>
    public static RecordingResult Of(
        RecordingEntry entry, StudySetup setup, AuditCriteria criteria, string? eventsFile, CancellationToken cancellation, bool withViews = false)
    {
        RecordingCompanions companions = BidsCompanions.Find(entry.FilePath);
        using Recording recording =
            companions.ApplyTo(RecordingOpener.Open(entry.FilePath, new ReadOptions(setup.Recording.SamplingHz, setup.Recording.Unit)));
        StudySetup own = setup.Recording.MainsHz is null && companions.PowerLineHz is { } mains
            ? setup with { Recording = setup.Recording with { MainsHz = mains } }
            : setup;
        TrialEvents events = TrialSources.Choose(recording, own, eventsFile, companions);
        TrialSet trials = TrialPlan.Of(recording, events, own);
        AuditInput input = new()
        {
            Id = entry.Id,
            Path = entry.RelativePath,
            Sha256 = Hash(entry.FilePath),
            Criteria = criteria,
            Setup = own,
            Trials = trials.Trials,
            TrialsFrom = trials.Source switch
            {
                TrialSource.Annotations => "annotations",
                TrialSource.Events => "events",
                TrialSource.Trigger => "trigger",
                _ => "blocks",
            },
            WithViews = withViews,
            Warnings = trials.Warnings,
        };
        return Audit.Of(recording, input, cancellation);
    }

    private static string Hash(string path)
    {
        using FileStream stream = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
