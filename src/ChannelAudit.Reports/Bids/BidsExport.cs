using System.Collections.Immutable;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Bids;

/// <summary>Writes an audit as a BIDS derivative data set; results are read one recording at a time and not kept.</summary>
public static class BidsExport
{
    private static readonly string[] Endings =
        ["_desc-quality_channels.tsv", "_desc-quality_channels.json", "_desc-quality_events.tsv", "_desc-quality_events.json"];

    /// <summary>Writes all files, or none; an earlier export that stands there is brought up to date.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="folder">The folder of the derivative data set.</param>
    /// <param name="cancel">Checked for every recording.</param>
    /// <returns>The files written.</returns>
    /// <exception cref="ChannelAuditException">When the place is taken or in raw data, names are not unique, or a file cannot be read or written.</exception>
    public static ImmutableArray<OutputFile> Write(StoredAudit audit, string folder, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(audit);
        string? raw = BidsTarget.Check(folder);
        ImmutableDictionary<string, BidsName> names = BidsNames.Of(audit.Recordings);
        using OutputBatch batch = new(folder);
        foreach (StoredRecording recording in audit.Recordings)
        {
            cancel.ThrowIfCancellationRequested();
            AddRecording(batch, audit.ResultOf(recording), names[recording.Id], raw);
        }

        batch.Add("README.md", BidsDescription.Readme());
        batch.Add(BidsTarget.Description, BidsDescription.Render(audit, raw is null ? null : Path.GetRelativePath(folder, raw).Replace('\\', '/')));
        batch.Commit(() => RemoveStale(folder, [.. batch.Files.Select(file => file.Path)]));
        return batch.Files;
    }

    private static void AddRecording(OutputBatch batch, RecordingResult recording, BidsName name, string? raw)
    {
        string? source = Source(recording.Path, raw);
        batch.Add(name.File("channels", ".tsv"), BidsTables.Channels(recording));
        batch.Add(name.File("channels", ".json"), BidsSidecar.Render("Quality of every audited channel", BidsColumns.OfChannels(), recording, source));
        batch.Add(name.File("events", ".tsv"), BidsTables.Events(recording));
        batch.Add(name.File("events", ".json"), BidsSidecar.Render("Quality of every trial of each audited channel", BidsColumns.OfEvents(), recording, source));
    }

    // A path of the audit starts at the root that was screened, a URI at the data set's: only a file that is there is named.
    private static string? Source(string path, string? raw)
    {
        string[] parts = path.Split('/');
        int subject = Array.FindIndex(parts, part => part.StartsWith("sub-", StringComparison.Ordinal));
        if (raw is null || subject < 0)
        {
            return null;
        }

        string below = string.Join('/', parts[subject..]);
        return SafePath.IsBelow(below) && File.Exists(Path.Combine(raw, below)) ? $"bids:raw:{below}" : null;
    }

    // Only what an earlier export must have made: our endings, where we write them.
    private static void RemoveStale(string folder, HashSet<string> written)
    {
        try
        {
            EnumerationOptions noLinks = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };
            foreach (string file in Directory.EnumerateFiles(folder, "sub-*", noLinks).ToArray())
            {
                string path = Path.GetRelativePath(folder, file).Replace('\\', '/');
                if (!written.Contains(path) && Endings.Any(ending => path.EndsWith(ending, StringComparison.Ordinal)))
                {
                    File.Delete(file);
                }
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite(folder, fault);
        }
    }
}
