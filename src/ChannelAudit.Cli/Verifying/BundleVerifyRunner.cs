using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Bundles;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Verifying;

/// <summary>Runs <c>verify</c> on a bundle: its files, its tables against its results, and each exclusion against its samples.</summary>
/// <param name="path">The file.</param>
internal sealed class BundleVerifyRunner(string path)
{
    private const string Audit = "audit";

    private readonly List<AuditCheck> _checks = [];

    /// <summary>Does it.</summary>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When the file is no bundle, or made to do harm.</exception>
    public int Run(TextWriter output, CancellationToken cancel)
    {
        try
        {
            return Checked(output, cancel);
        }
        catch (Exception fault) when (fault is ArgumentException or InvalidOperationException or IndexOutOfRangeException or ArithmeticException or KeyNotFoundException)
        {
            // A bundle comes from anywhere: what contradicts itself beyond the checks of its readers is its fault, not ours.
            throw BundleErrors.Contradicts(path, fault);
        }
    }

    private int Checked(TextWriter output, CancellationToken cancel)
    {
        using BundleFile bundle = BundleFile.Open(path);
        BundleIndex index = BundleReading.Of(bundle);
        using ScratchFolder scratch = ScratchFolder.Outside();
        _checks.Add(BundleEntries.Check(bundle, index));
        Extract(bundle, scratch);
        RecordedRun run = Recorded(scratch, bundle);
        _checks.Add(ListedFiles.Check(run));
        _checks.Add(RecordedInputs.Check(run, ProductVersion.Text));
        AuditCheck decisions = RecordedDecisions.Check(run);
        _checks.Add(decisions with { Text = Plain(decisions.Text, scratch) });
        _checks.AddRange(new[] { Files(bundle, run) }.OfType<AuditCheck>());
        FolderComparison? again = Again(run, scratch, cancel);
        ImmutableArray<ExclusionOutcome> outcomes = Exclusions(bundle, index, run, scratch, cancel);
        output.Write(VerifyText.Render(Head(run, index), _checks, again));
        output.Write(BundleText.Render(outcomes));
        return _checks.Exists(check => check.State == CheckState.Differs) ? ExitCode.Reached : ExitCode.Done;
    }

    private string Head(RecordedRun run, BundleIndex index)
    {
        bool isOurs = string.Equals(run.Audit.Version, ProductVersion.Text, StringComparison.Ordinal);
        string what = index.Least == ChannelAudit.Verdicts.Grade.Reject ? "reject" : "reject or questionable";
        return $"{OneLine.Of(path)}: a bundle with the samples of all that is {what}, made by channelaudit {OneLine.Of(run.Audit.Version)}"
            + (isOurs ? ", the version of this program" : $", checked by {ProductVersion.Text}: numbers may differ for that reason alone");
    }

    private void Extract(BundleFile bundle, ScratchFolder scratch)
    {
        foreach (string entry in bundle.Paths.Where(entry => entry.StartsWith(BundleIndex.AuditFolder, StringComparison.Ordinal)))
        {
            byte[] bytes = bundle.Bytes(entry)!;
            string place = scratch.In(entry);
            try
            {
                // Never over another: two names may be one on this system.
                Directory.CreateDirectory(Path.GetDirectoryName(place)!);
                using FileStream file = new(place, FileMode.CreateNew, FileAccess.Write);
                file.Write(bytes);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw BundleErrors.CannotUnpack(path, entry, fault);
            }
        }
    }

    // What audit.json lists beyond that is pages and pictures.
    private RecordedRun Recorded(ScratchFolder scratch, BundleFile bundle)
    {
        try
        {
            RecordedRun run = RecordedRun.Read(scratch.In(Audit));
            return run with { Files = [.. run.Files.Where(file => bundle.Has(BundleIndex.AuditFolder + file.Path))] };
        }
        catch (ChannelAuditException fault)
        {
            throw BundleErrors.Refused(path, BundleIndex.AuditFolder + "audit.json", Plain(fault.Message, scratch));
        }
    }

    private static AuditCheck? Files(BundleFile bundle, RecordedRun run)
    {
        string[] others =
        [
            .. (run.Inputs ?? [])
                .Select(input => (Path: $"inputs/{input.File.Role}/{input.File.FileName}", input.File.Bytes))
                .Where(file => bundle.Bytes(file.Path) is { } bytes && !bytes.AsSpan().SequenceEqual(file.Bytes.AsSpan()))
                .Select(file => file.Path),
        ];
        return others.Length == 0 ? null : new AuditCheck("input files", CheckState.Differs, $"not as in audit.json: {OneLine.List(others)}");
    }

    private FolderComparison? Again(RecordedRun run, ScratchFolder scratch, CancellationToken cancel)
    {
        const string name = "made again";
        try
        {
            Remake remake = new(run, scratch);
            remake.FromResults(cancel);
            bool isOurs = string.Equals(run.Audit.Version, ProductVersion.Text, StringComparison.Ordinal);
            string[] files =
            [
                .. run.Files.Select(file => file.Path)
                    .Where(file => isOurs || file.EndsWith(".tsv", StringComparison.Ordinal))
                    .Where(file => run.LedgerFault is null || RecordedDecisions.DoNotTouch(file)),
            ];
            FolderComparison found = FolderComparison.Of(run.Audit.Folder, remake.Folder, files);
            _checks.Add(found.Differing.IsEmpty
                ? new AuditCheck(name, CheckState.Ok, $"from the results, decisions replayed: {Quantities.Many(found.Same, "file")} the same, byte for byte")
                : new AuditCheck(name, CheckState.Differs, $"from the results: {Quantities.Many(found.Differing.Length, "file")} differ; the first difference is below"));
            return found;
        }
        catch (ChannelAuditException fault) when (!scratch.IsRefused)
        {
            _checks.Add(new AuditCheck(name, CheckState.Differs, $"it cannot be made again: {Plain(fault.Message, scratch)}"));
            return null;
        }
    }

    private ImmutableArray<ExclusionOutcome> Exclusions(BundleFile bundle, BundleIndex index, RecordedRun run, ScratchFolder scratch, CancellationToken cancel)
    {
        try
        {
            BundleExclusions exclusions = new(bundle, index, run.Audit, Limits(run));
            ImmutableArray<ExclusionOutcome> outcomes = [.. exclusions.Check(cancel)];
            _checks.Add(exclusions.Listed(outcomes));
            _checks.Add(BundleText.Check(outcomes));
            return outcomes;
        }
        catch (ChannelAuditException fault)
        {
            _checks.Add(new AuditCheck("exclusions", CheckState.Differs, $"they cannot be read: {Plain(fault.Message, scratch)}"));
            return [];
        }
    }

    // Limits that audit.json lists were held against the criteria file by then.
    private static AuditCriteria Limits(RecordedRun run) => CriteriaFile.Parse(CriteriaText.Canonical(run.Audit.Criteria), "audit.json, criteria");

    private static string Plain(string message, ScratchFolder scratch) => message.Replace(scratch.FolderPath + Path.DirectorySeparatorChar, string.Empty, StringComparison.Ordinal);
}
