using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Deciding;

/// <summary>Takes decisions about an audit: holds names against its results, and adds lines to its ledger. Tables and pages follow by <see cref="AuditUpdate"/>.</summary>
public static class DecisionDesk
{
    /// <summary>Opens an audit to decide on it.</summary>
    /// <param name="folder">Its folder.</param>
    /// <param name="version">The version of the program: tables of one version are not mixed with those of another.</param>
    /// <exception cref="ChannelAuditException">When it is none, a pilot, of another version, or its ledger is not as it was written.</exception>
    public static StoredAudit Open(string folder, string version)
    {
        StoredAudit audit = StoredAudit.Open(folder);
        if (PilotFiles.AreIn(folder))
        {
            throw DecidingErrors.IsPilot(folder);
        }

        return string.Equals(audit.Version, version, StringComparison.Ordinal) ? audit : throw DecidingErrors.OtherVersion(folder, audit.Version, version);
    }

    /// <summary>Adds decisions, all or none: when it returns they are on the disk.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="requests">The decisions in their order.</param>
    /// <param name="origin">With what they are made: <c>decide</c> for the command line.</param>
    /// <param name="blind">Whether the computed verdict was hidden from the person.</param>
    /// <param name="clock">Says when.</param>
    /// <param name="cancel">Ends the wait for another writer.</param>
    /// <exception cref="ChannelAuditException">When a recording, channel or trial is not there, a text is none, or the ledger cannot be added to; nothing is decided then.</exception>
    public static ImmutableArray<Decision> Decide(
        StoredAudit audit, IReadOnlyList<DecisionRequest> requests, string origin, bool blind, TimeProvider clock, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(audit);
        Dictionary<string, RecordingResult> results = new(StringComparer.Ordinal);
        Decision[] drafts = [.. requests.Select(request => Placed(audit, request, results) with { Origin = origin, Blind = blind })];
        return LedgerWriter.Append(audit.Folder, _ => drafts, clock, cancel);
    }

    // Of a table with hundreds of rows one must be told which.
    private static Decision Placed(StoredAudit audit, DecisionRequest request, Dictionary<string, RecordingResult> results)
    {
        try
        {
            return Draft(audit, request, results);
        }
        catch (ChannelAuditException fault) when (request.Place is not null)
        {
            throw DecidingErrors.At(request.Place, fault);
        }
    }

    private static Decision Draft(StoredAudit audit, DecisionRequest request, Dictionary<string, RecordingResult> results)
    {
        StoredRecording stored = Recording(audit, request.Recording);
        if (!results.TryGetValue(stored.Id, out RecordingResult? recording))
        {
            recording = audit.ResultOf(stored);
            results.Add(stored.Id, recording);
        }

        ChannelResult[] channels = request.Channel is { } name ? [Channel(recording, name)] : [.. recording.Channels];
        Trial? trial = request.Trial is { } number ? TrialOf(recording, number) : null;
        if (request.Channel is null && trial is null)
        {
            throw DecidingErrors.NoSubject(recording.Id);
        }

        return new Decision
        {
            By = DecisionText.Checked("the name", request.By, DecisionText.LongestName),
            Action = DecisionAction.Decide,
            Recording = recording.Id,
            Channel = request.Channel is null ? null : channels[0].Name,
            Trial = trial is null ? null : new DecidedTrial(trial.Number, trial.OnsetS, trial.DurationS, trial.Label),
            Verdict = request.Verdict,
            Reason = DecisionText.Checked("the reason", request.Reason, DecisionText.LongestReason),
            Computed = [.. channels.Select(channel => Computed(channel, trial)).OfType<ComputedVerdict>()],
            RecordingSha256 = recording.Sha256,
            CriteriaSha256 = audit.Criteria.Sha256,
            Origin = string.Empty,
        };
    }

    private static StoredRecording Recording(StoredAudit audit, string? given)
    {
        string[] ids = [.. audit.Recordings.Select(recording => recording.Id)];
        if (given is null)
        {
            return audit.Recordings.Length == 1 ? audit.Recordings[0] : throw DecidingErrors.WhichRecording(audit.Folder, ids);
        }

        return audit.Recordings.FirstOrDefault(recording => string.Equals(recording.Id, given, StringComparison.Ordinal))
            ?? throw DecidingErrors.NoRecording(audit.Folder, given, ids);
    }

    private static ChannelResult Channel(RecordingResult recording, string given) =>
        recording.Channels.FirstOrDefault(channel => string.Equals(channel.Name, given, StringComparison.Ordinal))
        ?? throw DecidingErrors.NoChannel(
            recording.Id,
            given,
            [.. recording.Channels.Select(channel => channel.Name)],
            recording.Channels.FirstOrDefault(channel => string.Equals(channel.Label, given, StringComparison.Ordinal))?.Name);

    private static Trial TrialOf(RecordingResult recording, int given) =>
        recording.Trials.FirstOrDefault(trial => trial.Number == given) ?? throw DecidingErrors.NoTrial(recording.Id, given, [.. recording.Trials.Select(trial => trial.Number)]);

    private static ComputedVerdict? Computed(ChannelResult channel, Trial? trial) => trial is null
        ? new ComputedVerdict(channel.Name, channel.Verdict, channel.Reasons)
        : channel.Cells.FirstOrDefault(cell => cell.Trial == trial.Number) is { } cell ? new ComputedVerdict(channel.Name, cell.Verdict, cell.Reasons) : null;
}
