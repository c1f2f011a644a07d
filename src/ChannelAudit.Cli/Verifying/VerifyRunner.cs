using ChannelAudit.Reports.Verifying;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Verifying;

/// <summary>
/// Runs <c>verify</c> on the folder of an audit: hashes everything, makes it again, and names the first difference. Nothing is written into the audit or the data.
/// </summary>
/// <param name="request">What was asked for.</param>
internal sealed class VerifyRunner(VerifyRequest request)
{
    private const string Again = "made again";

    private readonly List<AuditCheck> _checks = [];
    private FolderComparison? _comparison;
    private bool _isDataIncomplete;

    /// <summary>Does it.</summary>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When the folder holds no audit, or there are no data where they should be.</exception>
    public int Run(TextWriter output, CancellationToken cancel)
    {
        if (request.Data is { } data && !Path.Exists(data))
        {
            throw VerifyErrors.NoData(data);
        }

        RecordedRun run = RecordedRun.Read(request.Folder);
        using ScratchFolder scratch = ScratchFolder.Outside(request.Folder, request.Data);
        _checks.Add(ListedFiles.Check(run));
        _checks.AddRange(new[] { ListedFiles.Others(run), ListedFiles.Studies(run) }.OfType<AuditCheck>());
        _checks.Add(RecordedInputs.Check(run, ProductVersion.Text));
        _checks.Add(RecordedDecisions.Check(run));
        Remake(run, scratch, cancel);
        output.Write(VerifyText.Render(Head(run), _checks, _comparison));
        return _isDataIncomplete ? ExitCode.Unread : _checks.Exists(check => check.State == CheckState.Differs) ? ExitCode.Reached : ExitCode.Done;
    }

    private string Head(RecordedRun run)
    {
        string version = string.Equals(run.Audit.Version, ProductVersion.Text, StringComparison.Ordinal)
            ? $"made by channelaudit {ProductVersion.Text}, the version of this program"
            : $"made by channelaudit {OneLine.Of(run.Audit.Version)}, checked by {ProductVersion.Text}: results may differ for that reason alone;"
                + " tables are compared, the other files name their version";
        return $"{OneLine.Of(request.Folder)}: {version}";
    }

    private void Remake(RecordedRun run, ScratchFolder scratch, CancellationToken cancel)
    {
        FoundData? found = request.Data is { } root ? FoundData.Below(root, run) : null;
        _checks.Add(found?.Check(request.Data!) ?? new AuditCheck("recordings", CheckState.NotChecked, "no --data: no sample was looked at"));
        _isDataIncomplete = found is { Missing.IsEmpty: false };
        if (WhyNot(run, found) is { } cause)
        {
            _checks.Add(new AuditCheck(Again, CheckState.NotChecked, cause));
            return;
        }

        Remake remake = new(run, scratch);
        try
        {
            if (found is null)
            {
                remake.FromResults(cancel);
            }
            else
            {
                NameUnread(run, remake.FromRecordings(found.Entries, request, cancel));
            }
        }
        catch (ChannelAuditException fault) when (!scratch.IsRefused)
        {
            _checks.Add(new AuditCheck(Again, CheckState.Differs, $"it cannot be made again: {fault.Message}"));
            return;
        }

        Compare(run, found, remake.Folder);
    }

    private static string? WhyNot(RecordedRun run, FoundData? found) =>
        run.IsPilot ? "a pilot made it, which measures more than an audit; screen the recording, and verify that"
        : run.Inputs is null ? "audit.json does not hold criteria, setup, readings and events: screen again with this version"
        : found is { Entries.IsEmpty: true } ? "no recording was found"
        : null;

    private void NameUnread(RecordedRun run, IReadOnlyDictionary<string, string> unread)
    {
        HashSet<string> then = [.. run.Unread.Select(recording => recording.Path)];
        string[] now = [.. unread.Where(entry => !then.Contains(entry.Key)).Select(entry => entry.Value).Order(StringComparer.Ordinal)];
        if (now.Length > 0)
        {
            _isDataIncomplete = true;
            _checks.Add(new AuditCheck("readable", CheckState.Differs, string.Join("; ", now)));
        }
    }

    private void Compare(RecordedRun run, FoundData? found, string again)
    {
        bool isWhole = found is null or { Missing.IsEmpty: true };
        bool isSameVersion = string.Equals(run.Audit.Version, ProductVersion.Text, StringComparison.Ordinal);
        HashSet<string> ids = [.. found?.Entries.Select(entry => entry.Id) ?? []];
        bool withPictures = found is not null && request.WithPictures;
        string[] files =
        [
            .. run.Files.Select(file => file.Path)
                .Append("audit.json")
                .Where(file => isWhole || (file.Split('/') is ["recordings", string id, _] && ids.Contains(id)))
                .Where(file => isSameVersion || file.EndsWith(".tsv", StringComparison.Ordinal))
                .Where(file => run.LedgerFault is null || RecordedDecisions.DoNotTouch(file))
                .Where(file => withPictures || !IsPicture(file)),
        ];
        _comparison = FolderComparison.Of(request.Folder, again, files);
        _checks.Add(Said(found is null ? "from the results in it" : "from the recordings"));
        if (run.LedgerFault is not null)
        {
            _checks.Add(new AuditCheck("final", CheckState.NotChecked, "tables and pages with final verdicts need a ledger that holds"));
        }

        if (!isWhole)
        {
            _checks.Add(new AuditCheck("whole run", CheckState.NotChecked, "tables over all recordings need all of them"));
        }

        if (!withPictures && run.Files.Any(file => IsPicture(file.Path)))
        {
            _checks.Add(new AuditCheck("pictures", CheckState.NotChecked, found is null ? "they are drawn from the samples" : "--no-pictures"));
        }
    }

    private AuditCheck Said(string from) => _comparison!.Differing.IsEmpty
        ? new AuditCheck(Again, CheckState.Ok, $"{from}: {Quantities.Many(_comparison.Same, "file")} the same, byte for byte")
        : new AuditCheck(
            Again,
            CheckState.Differs,
            $"{from}: {Quantities.Many(_comparison.Differing.Length, "file")} of {(_comparison.Same + _comparison.Differing.Length).Plain()} differ; the first difference is below");

    private static bool IsPicture(string file) => file.EndsWith(".png", StringComparison.Ordinal);
}
