using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Criteria;
using ChannelAudit.Decisions;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Stored;

/// <summary>Reads <c>audit.json</c> back.</summary>
internal static class StoredAuditReading
{
    /// <summary>Reads the audit of a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="withDecisions">Whether the ledger is read; without it there are no decisions, however many were made.</param>
    /// <exception cref="ChannelAuditException">When it is none of ours, of another layout, or damaged.</exception>
    public static StoredAudit Open(string folder, bool withDecisions = true)
    {
        if (CommitJournal.IsIn(folder))
        {
            throw OutputErrors.HalfDone(folder);
        }

        string file = $"{OneLine.Of(folder)}/{PreviousAudit.FileName}";
        using JsonDocument document = Parse(Bytes(folder, file), file);
        if (document.RootElement.ValueKind != JsonValueKind.Object)
        {
            throw StoredErrors.NoAudit(folder);
        }

        JsonField root = new(document.RootElement, file, string.Empty);
        string format = root.TextOrNull("format") ?? string.Empty;
        if (!string.Equals(format, AuditJson.Format, StringComparison.Ordinal))
        {
            throw format.StartsWith(AuditJson.FormatName, StringComparison.Ordinal)
                ? OutputErrors.OtherLayout(file, OneLine.Of(format), AuditJson.Format)
                : StoredErrors.NoAudit(folder);
        }

        ImmutableArray<StoredRecording> recordings = root.List("recordings", Recording);
        if (recordings.DistinctBy(recording => recording.Id, StringComparer.Ordinal).Count() != recordings.Length)
        {
            throw root.Wrong("recordings", "a list with each id once");
        }

        LedgerMark decided = DecisionsJson.Read(root)?.Mark ?? LedgerMark.None;
        Ledger ledger = withDecisions ? Ledger.Read(folder) : Ledger.Empty;
        if (withDecisions)
        {
            ledger.RequireContinues(decided, folder);
        }

        return new StoredAudit
        {
            Folder = folder,
            Version = root.Text("version"),
            Criteria = CriteriaOf(root.Object("criteria")),
            Setup = Input(root.Object("setup")),
            Impedance = Input(root.Object("impedance")),
            Recordings = recordings,
            Unread = root.List("unread", field => new UnreadRecording(field.Text("path"), field.Text("message"), field.Text("hint"))),
            Warnings = [.. root.List("warnings", AuditReading.Warning).Where(entry => entry.Recording is null).Select(entry => entry.Warning)],
            Inputs = document.RootElement.TryGetProperty("inputs", out _) ? [.. root.List("inputs", InputJson.Read).Select(input => input.Input)] : [],
            Decisions = ledger,
            Decided = decided,
        };
    }

    private static byte[] Bytes(string folder, string file)
    {
        try
        {
            string path = Path.Combine(folder, PreviousAudit.FileName);
            return File.Exists(path) ? PlainFile.ReadAllBytes(path) : throw StoredErrors.NoAudit(folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotRead(file, fault);
        }
    }

    private static JsonDocument Parse(byte[] utf8, string file)
    {
        try
        {
            return StrictJson.Parse(utf8);
        }
        catch (JsonException fault)
        {
            throw OutputErrors.NotJson(file, (fault.LineNumber ?? 0) + 1, fault);
        }
    }

    private static StoredInput Input(JsonField field) => new(field.TextOrNull("file"), field.TextOrNull("sha256"));

    // An id becomes the name of a folder.
    private static StoredRecording Recording(JsonField field) => SafePath.IsName(field.Text("id"))
        ? new StoredRecording(field.Text("id"), field.Text("path"), field.Text("sha256"), field.TextOrNull("participant"))
        : throw field.Wrong("id", "an id of a recording");

    private static AuditCriteria CriteriaOf(JsonField field) => new()
    {
        FileName = field.TextOrNull("file"),
        Sha256 = field.Text("sha256"),
        Frozen = FreezeJson.Read(field),
        All = field.List("limits", limits => new Criterion
        {
            Reason = limits.Text("reason"),
            Questionable = Sets(limits, "questionable"),
            Reject = Sets(limits, "reject"),
            ChannelQuestionable = Sets(limits, "channel_questionable"),
            ChannelReject = Sets(limits, "channel_reject"),
            Source = limits.Text("source"),
        }),
    };

    private static ImmutableArray<LimitSet> Sets(JsonField field, string name) =>
        field.List(name, set => new LimitSet([.. set.Numbers().Select(limit => new Limit(limit.Name, limit.Value))]));
}
