using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Decisions;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Stored;

/// <summary>An audit that stands in a folder: what <c>audit.json</c> says, and the recordings' results one at a time.</summary>
public sealed record StoredAudit
{
    /// <summary>The folder as it was given.</summary>
    public required string Folder { get; init; }

    /// <summary>The version of the program that made it.</summary>
    public required string Version { get; init; }

    /// <summary>The limits in force.</summary>
    public required AuditCriteria Criteria { get; init; }

    /// <summary>The setup file.</summary>
    public required StoredInput Setup { get; init; }

    /// <summary>The impedance readings.</summary>
    public required StoredInput Impedance { get; init; }

    /// <summary>The recordings in the order of the file.</summary>
    public required ImmutableArray<StoredRecording> Recordings { get; init; }

    /// <summary>The recordings that could not be read.</summary>
    public required ImmutableArray<UnreadRecording> Unread { get; init; }

    /// <summary>Warnings that belong to no single recording.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];

    /// <summary>The files of criteria, setup, readings and events, byte for byte; empty in audits of versions that did not keep them.</summary>
    public ImmutableArray<RunInput> Inputs { get; init; } = [];

    /// <summary>What persons decided, verified; it continues what the tables and pages were made from.</summary>
    public Ledger Decisions { get; init; } = Ledger.Empty;

    /// <summary>How far the ledger had grown when tables and pages were made.</summary>
    public LedgerMark Decided { get; init; } = LedgerMark.None;

    /// <summary>Reads <c>audit.json</c> of a folder.</summary>
    /// <exception cref="ChannelAuditException">When the folder holds no audit, or one of another layout, or a value is missing or of the wrong kind, or the ledger of decisions is not as it was written.</exception>
    public static StoredAudit Open(string folder) => StoredAuditReading.Open(folder);

    /// <summary>Everything known about one recording, with the decisions about it; nothing of it is kept here.</summary>
    /// <exception cref="ChannelAuditException">When its <c>result.json</c> is not there, damaged, or belongs to another audit.</exception>
    public RecordingResult ResultOf(StoredRecording recording)
    {
        ArgumentNullException.ThrowIfNull(recording);
        string place = AuditWriter.Place(recording.Id, RecordingContent.ResultName);
        string file = $"{OneLine.Of(Folder)}/{OneLine.Of(place)}";
        StoredResult stored = ResultReader.Read(Bytes(Path.Combine(Folder, place), file), file);
        bool isOurs = string.Equals(stored.Result.Id, recording.Id, StringComparison.Ordinal)
            && string.Equals(stored.Result.Sha256, recording.Sha256, StringComparison.Ordinal)
            && string.Equals(stored.Origin.CriteriaSha256, Criteria.Sha256, StringComparison.Ordinal)
            && string.Equals(stored.Origin.SetupSha256, Setup.Sha256, StringComparison.Ordinal)
            && string.Equals(stored.Origin.Version, Version, StringComparison.Ordinal);
        return isOurs ? stored.Result.With(Decisions, Criteria.Sha256) : throw StoredErrors.OfAnotherAudit(file);
    }

    private static byte[] Bytes(string path, string file)
    {
        try
        {
            return PlainFile.ReadAllBytes(path);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            throw StoredErrors.NoResult(file);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotRead(file, fault);
        }
    }
}
