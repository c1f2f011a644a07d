using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Impedance;

/// <summary>The readings of a table, as the technician wrote them down; none is left out and none is changed.</summary>
public sealed record ImpedanceLog
{
    /// <summary>The file's name without its folder.</summary>
    public required string FileName { get; init; }

    /// <summary>SHA-256 of the file's bytes in lower-case hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>The readings in order of time, equal times in the order of the file; in the order of the file when not every reading has a time.</summary>
    public required ImmutableArray<LoggedReading> Readings { get; init; }

    /// <summary>What was odd about the table.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];

    /// <summary>Whether the table says to which recording each reading belongs.</summary>
    public bool NamesRecordings => Readings.Any(reading => reading.Recording is not null);

    /// <summary>Whether every reading has a time.</summary>
    public bool HasTimes => !Readings.IsEmpty && Readings.All(reading => reading.Time is not null);

    /// <summary>Ids of the recordings that the table names, in the order of their first line; empty when it has no such column.</summary>
    public ImmutableArray<string> Recordings =>
    [
        .. Readings.Where(reading => reading.Recording is not null)
            .OrderBy(reading => reading.Line)
            .Select(reading => reading.Recording!)
            .Distinct(StringComparer.Ordinal),
    ];

    /// <summary>Reads a table.</summary>
    /// <param name="path">
    /// Delimited text, tabs between columns: <c>site</c>, <c>pair</c>, <c>kohm</c>, and optional <c>time</c>, <c>phase</c>, <c>recording</c>.
    /// Other columns are left alone.
    /// </param>
    /// <param name="setup">Names the sites and the ids of their electrodes; a setup without sites lets every site of the table stand.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, or a line says what cannot be; usage fault.</exception>
    public static ImpedanceLog Read(string path, StudySetup setup) => ImpedanceTable.Read(path, setup);

    /// <summary>Refuses a table that does not say to which of several recordings its readings belong, and names those that are not among them.</summary>
    /// <param name="recordingIds">Ids of the recordings of a run, one and more.</param>
    /// <returns>Ids in the table that are none of these, in the order of their first line.</returns>
    /// <exception cref="ChannelAuditException">When there are several recordings and the table has no column <c>recording</c>.</exception>
    public ImmutableArray<string> NotAmong(IReadOnlyList<string> recordingIds) => recordingIds.Count > 1 && !NamesRecordings
        ? throw ImpedanceErrors.WhichRecording(FileName, recordingIds)
        : [.. Recordings.Where(recording => !recordingIds.Contains(recording, StringComparer.Ordinal))];

    /// <summary>The readings of one recording.</summary>
    /// <param name="recordingId">Its id.</param>
    /// <returns>All readings when the table names no recordings; none when it names others only.</returns>
    public ImpedanceLog For(string recordingId) => NamesRecordings
        ? this with { Readings = [.. Readings.Where(reading => string.Equals(reading.Recording, recordingId, StringComparison.Ordinal))] }
        : this;
}
