using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Criteria;

/// <summary>The table <c>[frozen]</c> of a criteria file: the day, and the limits of that day as text.</summary>
internal static class FreezeTable
{
    /// <summary>Its name.</summary>
    public const string Name = "frozen";

    private const string Limits = "limits";

    private static readonly ImmutableArray<TomlKey> Keys =
    [
        new("date", "date = 2026-03-01", "the day on which the limits were frozen"),
        new("version", "version = \"1.0.0\"", "the version of the program that froze them"),
        new("sha256", "sha256 = \"0123...\"", "the hash of the limits on that day"),
        new(Limits, "limits = '''...'''", "the limits on that day"),
    ];

    /// <summary>Writes the table.</summary>
    public static string Write(ImmutableArray<Criterion> all, string date, string version) =>
        $"""
        # What follows is the record of the freeze. Limits are changed above, never here.
        [{Name}]
        date = {date}
        version = "{version}"
        sha256 = "{CriteriaText.Hash(all)}"
        limits = '''
        {CriteriaText.Hashed(all)}'''

        """.ReplaceLineEndings("\n");

    /// <summary>Reads the table and holds it against the limits in force.</summary>
    /// <param name="table">The table.</param>
    /// <param name="now">The limits that stand in the file now.</param>
    /// <param name="fileName">For messages.</param>
    /// <exception cref="ChannelAuditException">When a key is missing, unknown or of another kind.</exception>
    public static FreezeRecord Read(TomlNode table, ImmutableArray<Criterion> now, string fileName)
    {
        TomlSection section = new(table, $"[{Name}]", fileName, Keys);
        string sha256 = section.Text("sha256") ?? throw CriteriaErrors.NotInRecord(section, "sha256");
        TomlNode text = section.Find(Limits) ?? throw CriteriaErrors.NotInRecord(section, Limits);
        string then = text.Text.ReplaceLineEndings("\n");
        return new FreezeRecord(
            section.Date("date") ?? throw CriteriaErrors.NotInRecord(section, "date"),
            section.Text("version") ?? throw CriteriaErrors.NotInRecord(section, "version"),
            sha256,
            [.. Damage(then, sha256), .. Differences(then, now)]);
    }

    private static IEnumerable<string> Damage(string then, string sha256)
    {
        if (!string.Equals(TomlFile.Hash(Encoding.UTF8.GetBytes(then)), sha256, StringComparison.Ordinal))
        {
            yield return "[frozen] was changed itself: its limits do not have its hash, so nobody can say what was frozen";
        }
    }

    private static IEnumerable<string> Differences(string then, ImmutableArray<Criterion> now)
    {
        const string place = "[frozen] limits";
        TomlNode root;
        ImmutableArray<Criterion> before;
        try
        {
            root = TomlTree.Parse(then, place);
            before = CriteriaFile.Apply(root, place);
        }
        catch (ChannelAuditException fault)
        {
            return [$"the frozen limits cannot be read by this version: {fault.Message}"];
        }

        return now.SelectMany((criterion, i) => CriterionLevel.Of(criterion.Reason).Select(level => Difference(level, root, before[i], criterion))).OfType<string>();
    }

    // A reason or a list that a later version added was not frozen, whatever its default.
    private static string? Difference(CriterionLevel level, TomlNode root, Criterion before, Criterion now)
    {
        bool wasThere = root.Entries.TryGetValue(now.Reason, out TomlNode? table) && table.Entries.ContainsKey(level.Key);
        string was = wasThere ? CriteriaText.Sets(level.Get(before)) : "not there";
        string isNow = CriteriaText.Sets(level.Get(now));
        return string.Equals(was, isNow, StringComparison.Ordinal) ? null : $"[{now.Reason}] {level.Key}: {was} -> {isNow}";
    }
}
