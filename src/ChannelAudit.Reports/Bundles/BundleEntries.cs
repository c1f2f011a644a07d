using System.Security.Cryptography;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Bundles;

/// <summary>The files of a bundle against its index.</summary>
public static class BundleEntries
{
    /// <summary>Whether each is there with the bytes of the index, and no other.</summary>
    public static AuditCheck Check(BundleFile bundle, BundleIndex index)
    {
        ArgumentNullException.ThrowIfNull(bundle);
        ArgumentNullException.ThrowIfNull(index);
        List<string> faults = [];
        HashSet<string> known = new(StringComparer.Ordinal) { BundleIndex.FileName };
        foreach (BundleEntry entry in index.Entries)
        {
            known.Add(entry.Path);
            string? fault = bundle.Bytes(entry.Path) is not { } bytes ? "is missing"
                : !string.Equals(Convert.ToHexStringLower(SHA256.HashData(bytes)), entry.Sha256, StringComparison.Ordinal) ? $"has other bytes than {BundleIndex.FileName} lists"
                : null;
            if (fault is not null)
            {
                faults.Add($"{OneLine.Of(entry.Path)} {fault}");
            }
        }

        faults.AddRange(bundle.Paths.Where(path => !known.Contains(path)).Select(path => $"{OneLine.Of(path)} is not in {BundleIndex.FileName}"));
        return faults.Count == 0
            ? new AuditCheck("entries", CheckState.Ok, $"{Quantities.Many(index.Entries.Length, "file")} with the bytes that {BundleIndex.FileName} lists")
            : new AuditCheck("entries", CheckState.Differs, string.Join("; ", faults.Take(5)) + (faults.Count > 5 ? $"; and {(faults.Count - 5).Plain()} more" : string.Empty));
    }
}
