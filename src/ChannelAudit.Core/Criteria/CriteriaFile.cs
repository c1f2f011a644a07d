using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Criteria;

/// <summary>Reads <c>criteria.toml</c>: what differs from the defaults.</summary>
public static class CriteriaFile
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <returns>All limits in force.</returns>
    /// <exception cref="ChannelAuditException">When it cannot be read, is not TOML, or has a limit that cannot be.</exception>
    public static AuditCriteria Read(string path)
    {
        TomlFile file = TomlFile.Read(path);
        return Parse(file.Content, file.Name);
    }

    /// <summary>Reads text.</summary>
    /// <param name="toml">The content of a criteria file.</param>
    /// <param name="fileName">The file's name, for messages.</param>
    /// <returns>All limits in force: the defaults with the differences.</returns>
    /// <exception cref="ChannelAuditException">When it is not TOML, or has a limit that cannot be.</exception>
    public static AuditCriteria Parse(string toml, string fileName)
    {
        TomlNode root = TomlTree.Parse(toml, fileName);
        ImmutableArray<Criterion> all = Apply(root, fileName);
        return new AuditCriteria
        {
            All = all,
            Sha256 = CriteriaText.Hash(all),
            FileName = fileName,
            Frozen = root.Entries.TryGetValue(FreezeTable.Name, out TomlNode? record) ? FreezeTable.Read(record, all, fileName) : null,
        };
    }

    /// <summary>The defaults with what a file changes.</summary>
    /// <exception cref="ChannelAuditException">When it has a table that is no reason, or a limit that cannot be.</exception>
    internal static ImmutableArray<Criterion> Apply(TomlNode root, string fileName)
    {
        ImmutableArray<Criterion> defaults = DefaultCriteria.All.All;
        string[] reasons = [.. defaults.Select(criterion => criterion.Reason)];
        foreach ((string name, TomlNode node) in root.Entries)
        {
            if (!reasons.Contains(name, StringComparer.Ordinal) && name is not FreezeTable.Name)
            {
                throw CriteriaErrors.UnknownReason(fileName, node.Line, name, reasons);
            }
        }

        return
        [
            .. defaults.Select(criterion => root.Entries.TryGetValue(criterion.Reason, out TomlNode? table)
                ? CriterionTable.Apply(table, criterion, fileName)
                : criterion),
        ];
    }
}
