using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Reports.Json;

namespace ChannelAudit.Reports.Output;

/// <summary>What an audit already standing in a folder says it wrote.</summary>
internal static class PreviousAudit
{
    /// <summary>The name of the file that makes a folder an audit.</summary>
    public const string FileName = "audit.json";

    /// <summary>The paths that it lists; empty when the folder is new, or holds nothing but left-overs of a broken run.</summary>
    /// <exception cref="ChannelAuditException">When the folder is neither empty nor an audit, or cannot be read.</exception>
    public static ImmutableArray<string> Files(string folder)
    {
        if (File.Exists(folder))
        {
            throw OutputErrors.NotAFolder(folder);
        }

        if (!Directory.Exists(folder))
        {
            return [];
        }

        try
        {
            string audit = Path.Combine(folder, FileName);
            return File.Exists(audit) ? Listed(folder, File.ReadAllBytes(audit)) : RequireEmpty(folder);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotRead(folder, exception);
        }
    }

    private static ImmutableArray<string> Listed(string folder, byte[] utf8)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(utf8);
            JsonField root = new(document.RootElement, FileName, string.Empty);
            return document.RootElement.ValueKind == JsonValueKind.Object
                && root.TextOrNull("format")?.StartsWith(AuditJson.FormatName, StringComparison.Ordinal) == true
                ? root.List("files", file => file.Text("path"))
                : throw OutputErrors.NotAnAudit(folder, FileName);
        }
        catch (JsonException)
        {
            throw OutputErrors.NotAnAudit(folder, FileName);
        }
    }

    private static ImmutableArray<string> RequireEmpty(string folder)
    {
        string? foreign = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(file => !file.EndsWith(OutputBatch.PartialSuffix, StringComparison.Ordinal))
            .Select(file => Path.GetRelativePath(folder, file))
            .Order(StringComparer.Ordinal)
            .FirstOrDefault();
        return foreign is null ? [] : throw OutputErrors.NotAnAudit(folder, foreign);
    }
}
