using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>Reads <c>setup.toml</c>.</summary>
public static class SetupFile
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The setup with the file's name and the SHA-256 of its bytes.</returns>
    /// <exception cref="ChannelAuditException">When it cannot be read, is not TOML, or says something that a setup cannot say.</exception>
    public static StudySetup Read(string path)
    {
        TomlFile file = TomlFile.Read(path);
        return Parse(file.Content, file.Name) with { Sha256 = file.Sha256 };
    }

    /// <summary>Reads text.</summary>
    /// <param name="toml">The content of a setup file.</param>
    /// <param name="fileName">The file's name, for messages.</param>
    /// <returns>The setup with the SHA-256 of the text in UTF-8.</returns>
    /// <exception cref="ChannelAuditException">When it is not TOML, or says something that a setup cannot say.</exception>
    public static StudySetup Parse(string toml, string fileName)
    {
        TomlNode root = TomlTree.Parse(toml, fileName);
        RefuseUnknownTables(root, fileName);
        var scoring = new TomlSection(root.Entries.GetValueOrDefault("scoring"), "[scoring]", fileName, SetupKeys.Scoring);
        ImmutableArray<SiteSetup> sites = SiteTables.Read(root.Entries.GetValueOrDefault("sites"), fileName);
        return new StudySetup
        {
            Recording = RecordingTable.Read(
                new TomlSection(root.Entries.GetValueOrDefault("recording"), "[recording]", fileName, SetupKeys.Recording)),
            Sites = sites,
            Overrides = OverrideTables.Read(root.Entries.GetValueOrDefault("recordings"), sites, fileName),
            ParticipantPath = ParticipantTable.Read(
                new TomlSection(root.Entries.GetValueOrDefault("participants"), "[participants]", fileName, SetupKeys.Participants)),
            Trials = ScoringTable.WithWindow(
                TrialTable.Read(new TomlSection(root.Entries.GetValueOrDefault("trials"), "[trials]", fileName, SetupKeys.Trials)), scoring),
            Scoring = ScoringTable.Read(scoring),
            Protocol = root.Entries.GetValueOrDefault("protocol") is { } protocol
                ? ProtocolTable.Read(new TomlSection(protocol, "[protocol]", fileName, SetupKeys.Protocol))
                : null,
            ShowsPeople = new TomlSection(root.Entries.GetValueOrDefault("trend"), "[trend]", fileName, SetupKeys.Trend).Truth("people") ?? false,
            FileName = fileName,
            Sha256 = TomlFile.Hash(Encoding.UTF8.GetBytes(toml)),
        };
    }

    private static void RefuseUnknownTables(TomlNode root, string fileName)
    {
        foreach ((string name, TomlNode node) in root.Entries)
        {
            if (SetupKeys.Tables.Any(table => Is(table, name)))
            {
                continue;
            }

            if (node.Kind != TomlKind.Table && TableOf(name) is { } home)
            {
                throw SetupErrors.OutsideItsTable(fileName, node.Line, name, home);
            }

            throw TomlErrors.UnknownKey(fileName, node.Line, name, "the setup", [.. SetupKeys.Tables.Select(table => table.Name)]);
        }
    }

    private static string? TableOf(string key)
    {
        if (SetupKeys.Recording.Any(known => Is(known, key)))
        {
            return "[recording]";
        }

        if (SetupKeys.Trials.Any(known => Is(known, key)))
        {
            return "[trials]";
        }

        if (SetupKeys.Sites.Any(known => Is(known, key)))
        {
            return "[[sites]]";
        }

        if (SetupKeys.Scoring.Any(known => Is(known, key)))
        {
            return "[scoring]";
        }

        return SetupKeys.Protocol.Any(known => Is(known, key)) ? "[protocol]" : null;
    }

    private static bool Is(TomlKey known, string name) => string.Equals(known.Name, name, StringComparison.Ordinal);
}
