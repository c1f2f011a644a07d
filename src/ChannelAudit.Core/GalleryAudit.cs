using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Gallery;
using ChannelAudit.Views;

namespace ChannelAudit;

/// <summary>Makes the specimens of the gallery and audits them as any recording, with the default limits: nothing is known of the plan but its setup.</summary>
public static class GalleryAudit
{
    // More than any panel has pixels.
    private const int Columns = 1500;

    /// <summary>The exhibits of a subject: the fault, then what resembles it.</summary>
    /// <param name="subject">The subject.</param>
    /// <param name="cancellation">Checked for every block of samples.</param>
    public static ImmutableArray<GalleryExhibit> Of(GallerySubject subject, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return [.. subject.Specimens.Select(specimen => Of(specimen, cancellation))];
    }

    private static GalleryExhibit Of(GallerySpecimen specimen, CancellationToken cancellation)
    {
        using Recording recording = MadeRecording.Make(specimen.Plan).Open();
        return new GalleryExhibit
        {
            Specimen = specimen,
            Recording = Audited(recording, specimen, cancellation),
            Traces =
            [
                .. specimen.Excerpts.Select(excerpt => Sites(specimen)
                    .Select(site => recording.Channels[specimen.Plan.SiteIndex(site)])
                    .Select(channel => ExcerptTrace.Of(recording, channel, excerpt.FromS, excerpt.ToS, Columns, cancellation))
                    .ToImmutableArray()),
            ],
        };
    }

    private static RecordingResult Audited(Recording recording, GallerySpecimen specimen, CancellationToken cancellation)
    {
        // As any lab knows its mains: a whisper of it cannot be told from chance, and a tone could be taken for it.
        StudySetup made = SetupFile.Parse(SetupText.Of(specimen.Plan), "setup.toml");
        StudySetup setup = made with { Recording = made.Recording with { MainsHz = GallerySession.MainsHz } };
        TrialSet trials = TrialPlan.Of(recording, TrialSources.Choose(recording, setup, null, RecordingCompanions.None), setup);
        AuditInput input = new()
        {
            Id = specimen.Name,
            Path = recording.FileName,
            Sha256 = string.Empty,
            Criteria = DefaultCriteria.All,
            Setup = setup,
            Trials = trials.Trials,
            TrialsFrom = "annotations",
            WithViews = true,
            Warnings = trials.Warnings,
        };
        return Audit.Of(recording, input, cancellation);
    }

    private static IEnumerable<string> Sites(GallerySpecimen specimen) =>
        specimen.Partner is { } partner ? [specimen.Site, partner] : [specimen.Site];
}
