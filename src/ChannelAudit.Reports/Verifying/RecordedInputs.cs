using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Verifying;

/// <summary>The files that an audit was made with, against the hashes beside them and the limits that it says were in force.</summary>
public static class RecordedInputs
{
    private const string Name = "inputs";

    /// <summary>Checks them.</summary>
    /// <param name="run">What the audit says.</param>
    /// <param name="version">The version of this program: another one may have other default limits.</param>
    public static AuditCheck Check(RecordedRun run, string version)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Inputs is not { } inputs)
        {
            return new AuditCheck(Name, CheckState.NotChecked, "audit.json was written by a version that did not keep them");
        }

        string[] faults = [.. Bytes(inputs), .. Hashes(run, inputs), .. Limits(run, inputs, version)];
        return faults.Length > 0
            ? new AuditCheck(Name, CheckState.Differs, string.Join("; ", faults))
            : new AuditCheck(Name, CheckState.Ok, string.Join(", ", inputs.Select(input => $"{input.File.Role} {OneLine.Of(input.File.FileName)}").DefaultIfEmpty("none given"))
                + $"; limits: {FreezeWords.Of(run.Audit.Criteria)}");
    }

    /// <summary>The file of a role, or null.</summary>
    public static RunInput? Of(RecordedRun run, string role)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Inputs?.Select(input => input.File).FirstOrDefault(file => string.Equals(file.Role, role, StringComparison.Ordinal));
    }

    private static IEnumerable<string> Bytes(ImmutableArray<(RunInput File, string Sha256)> inputs) => inputs
        .Where(input => !string.Equals(input.File.Sha256, input.Sha256, StringComparison.Ordinal))
        .Select(input => $"the text of {input.File.Role} {OneLine.Of(input.File.FileName)} does not have the SHA-256 that stands beside it");

    private static IEnumerable<string> Hashes(RecordedRun run, ImmutableArray<(RunInput File, string Sha256)> inputs)
    {
        (string Role, StoredInput Said)[] all = [(RunInput.Setup, run.Audit.Setup), (RunInput.Readings, run.Audit.Impedance)];
        return all
            .Where(one => !string.Equals(one.Said.Sha256, inputs.FirstOrDefault(input => string.Equals(input.File.Role, one.Role, StringComparison.Ordinal)).File?.Sha256, StringComparison.Ordinal))
            .Select(one => $"{one.Role}: the file in inputs is not the one that audit.json names");
    }

    private static IEnumerable<string> Limits(RecordedRun run, ImmutableArray<(RunInput File, string Sha256)> inputs, string version)
    {
        AuditCriteria said = run.Audit.Criteria;
        if (!string.Equals(CriteriaText.HashOf(said), said.Sha256, StringComparison.Ordinal))
        {
            yield return "the limits in audit.json do not have the SHA-256 that stands beside them";
        }

        if (!string.Equals(run.Audit.Version, version, StringComparison.Ordinal))
        {
            yield break;
        }

        foreach (string line in Differences(Of(run, RunInput.Criteria), said))
        {
            yield return line;
        }
    }

    private static ImmutableArray<string> Differences(RunInput? file, AuditCriteria said)
    {
        try
        {
            AuditCriteria read = file is null ? DefaultCriteria.All : CriteriaFile.Parse(Encoding.UTF8.GetString(file.Bytes.AsSpan()).TrimStart('\uFEFF'), file.FileName);
            bool areTheSameReasons = read.All.Select(criterion => criterion.Reason).SequenceEqual(said.All.Select(criterion => criterion.Reason), StringComparer.Ordinal);
            return areTheSameReasons
                ? [.. CriteriaDifferences.Lines(read, said).Select(line => $"limits: {line} ({OneLine.Of(file?.FileName ?? "the defaults")} -> audit.json)")]
                : ["the limits in audit.json are not of the reasons that this version has"];
        }
        catch (ChannelAuditException fault)
        {
            return [$"the criteria in inputs are not in order: {fault.Message}"];
        }
    }
}
