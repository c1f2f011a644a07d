using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The <c>[participants]</c> table.</summary>
internal static class ParticipantTable
{
    private static readonly ImmutableArray<string> Names = ["participant", "group", "date"];

    /// <summary>Reads it: the pattern that tells from a path who it is; null when it is left out.</summary>
    public static PathPattern? Read(TomlSection section)
    {
        if (section.Text("path") is not { } text)
        {
            return null;
        }

        PathPattern pattern = PathPattern.Of(text, Names, out string? unknown) ?? throw SetupErrors.UnknownInBraces(section, "path", unknown!, Names);
        return text.Contains('{', StringComparison.Ordinal) ? pattern : throw SetupErrors.NothingInBraces(section, "path");
    }
}
