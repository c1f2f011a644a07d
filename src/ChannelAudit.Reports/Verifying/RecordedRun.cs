using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Verifying;

/// <summary>What an audit says of how it was made: enough to make it again. Nothing in it is believed before it is checked.</summary>
public sealed record RecordedRun
{
    /// <summary>What <c>audit.json</c> says otherwise.</summary>
    public required StoredAudit Audit { get; init; }

    /// <summary>The files of criteria, setup, readings and events with the hash that stands beside each; null in audits of versions that did not keep them.</summary>
    public required ImmutableArray<(RunInput File, string Sha256)>? Inputs { get; init; }

    /// <summary>Every other file of the audit.</summary>
    public required ImmutableArray<OutputFile> Files { get; init; }

    /// <summary>From what each recording's result was made.</summary>
    public required ImmutableDictionary<string, RecordingStamp> Stamps { get; init; }

    /// <summary>The recordings that could not be read then.</summary>
    public required ImmutableArray<UnreadRecording> Unread { get; init; }

    /// <summary>What is wrong with the ledger of decisions, with its line; null when nothing is. Without a ledger that holds, <see cref="Audit"/> has no decisions.</summary>
    public string? LedgerFault { get; init; }

    /// <summary>Whether it was a run over one recording, whose page is the report.</summary>
    public bool IsAlone => Audit.Recordings.Length + Unread.Length == 1;

    /// <summary>Whether a pilot made it, which measures more than an audit.</summary>
    public bool IsPilot => Files.Any(file => file.Path is PilotFiles.DoNext);

    /// <summary>Whether tables were written as Parquet files too.</summary>
    public bool WithParquet => ParquetTables.AreAmong(Files);

    /// <summary>The pictures that were asked for: <c>none</c>, <c>summary</c> or <c>all</c>.</summary>
    public string Figures => Stamps.Values.Select(stamp => stamp.Figures).FirstOrDefault("none");

    /// <summary>Reads it.</summary>
    /// <exception cref="ChannelAuditException">When the folder holds no audit, or its <c>audit.json</c> is damaged.</exception>
    public static RecordedRun Read(string folder)
    {
        (StoredAudit audit, string? fault) = WithDecisions(StoredAuditReading.Open(folder, withDecisions: false));
        string path = Path.Combine(folder, PreviousAudit.FileName);
        using JsonDocument document = StrictJson.Parse(PlainFile.ReadAllBytes(path));
        JsonField root = new(document.RootElement, $"{OneLine.Of(folder)}/{PreviousAudit.FileName}", string.Empty);
        return new RecordedRun
        {
            Audit = audit,
            LedgerFault = fault,
            Inputs = document.RootElement.TryGetProperty("inputs", out _) ? root.List("inputs", InputJson.Read) : null,
            Files = root.List("files", Listed),
            Stamps = root.List("recordings", field => (Id: field.Text("id"), Stamp: new RecordingStamp(field.Text("inputs_sha256"), field.Text("figures"))))
                .ToImmutableDictionary(entry => entry.Id, entry => entry.Stamp, StringComparer.Ordinal),
            Unread = root.List("unread", field => new UnreadRecording(field.Text("path"), field.Text("message"), field.Text("hint"))),
        };
    }

    private static (StoredAudit Audit, string? Fault) WithDecisions(StoredAudit audit)
    {
        try
        {
            Ledger ledger = Ledger.Read(audit.Folder);
            ledger.RequireContinues(audit.Decided, audit.Folder);
            return (audit with { Decisions = ledger }, null);
        }
        catch (ChannelAuditException fault)
        {
            return (audit, fault.Message);
        }
    }

    // A path that leads out of the folder would have us read, and compare with, anything.
    private static OutputFile Listed(JsonField field) => SafePath.IsBelow(field.Text("path"))
        ? new OutputFile(field.Text("path"), field.Text("sha256"))
        : throw field.Wrong("path", "a path below the folder");
}
