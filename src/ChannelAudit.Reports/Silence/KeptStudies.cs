using System.Collections.Immutable;
using System.Security.Cryptography;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Silence;

/// <summary>Studies of planted faults that stand in an audit's folder: those that hold for what was audited, and those that do not any more.</summary>
internal sealed class KeptStudies(string folder)
{
    private readonly List<KeptStudy> _kept = [];
    private readonly List<string> _outdated = [];

    /// <summary>Those that hold, in the order of the recordings.</summary>
    public ImmutableArray<KeptStudy> Kept => [.. _kept];

    /// <summary>Ids of recordings whose study is of other inputs.</summary>
    public ImmutableArray<string> Outdated => [.. _outdated];

    /// <summary>Looks at a recording of a run.</summary>
    public void Add(AuditRun run, RecordingResult recording)
    {
        string file = PlaceOf(folder, recording.Id);
        if (!File.Exists(file))
        {
            return;
        }

        if (Read(file, out string sha256) is { } read && Holds(read, run, recording))
        {
            _kept.Add(new KeptStudy(read.Result, sha256));
        }
        else
        {
            _outdated.Add(recording.Id);
        }
    }

    /// <summary>Takes those away that hold no more.</summary>
    public void RemoveOutdated()
    {
        foreach (string file in _outdated.SelectMany(id => SilenceFiles.All.Select(name => Path.Combine(folder, AuditWriter.Place(id, name)))))
        {
            Quietly.Do(() => File.Delete(file));
        }
    }

    /// <summary>Whether a page shows the study that stands beside a recording, if there is one.</summary>
    /// <param name="folder">The folder of the audit.</param>
    /// <param name="id">The recording.</param>
    /// <param name="page">The page.</param>
    public static bool IsShown(string folder, string id, string page)
    {
        string file = PlaceOf(folder, id);
        return !File.Exists(file) || (Read(file, out string sha256) is not null && page.Contains(sha256, StringComparison.Ordinal));
    }

    private static string PlaceOf(string folder, string id) => Path.Combine(folder, AuditWriter.Place(id, SilenceFiles.Json));

    private static (string Version, DetectabilityResult Result)? Read(string file, out string sha256)
    {
        sha256 = string.Empty;
        try
        {
            byte[] bytes = PlainFile.ReadAllBytes(file);
            sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
            return SilenceJson.Read(bytes, SilenceFiles.Json);
        }
        catch (Exception fault) when (fault is ChannelAuditException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static bool Holds((string Version, DetectabilityResult Result) read, AuditRun run, RecordingResult recording) =>
        string.Equals(read.Version, run.Version, StringComparison.Ordinal)
        && string.Equals(read.Result.Sha256, recording.Sha256, StringComparison.Ordinal)
        && string.Equals(read.Result.CriteriaSha256, run.Criteria.Sha256, StringComparison.Ordinal)
        && string.Equals(read.Result.SetupSha256, run.Setup.Sha256, StringComparison.Ordinal)
        && string.Equals(read.Result.TrialsSha256, TrialsKey.Of(recording.Trials), StringComparison.Ordinal);
}
