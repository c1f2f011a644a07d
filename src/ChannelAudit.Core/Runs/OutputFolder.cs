using System.Text.Json;
using ChannelAudit.Decisions;
using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>Decides whether results may go into a folder, before any work is done.</summary>
public static class OutputFolder
{
    /// <summary>The name of the file that makes a folder an audit.</summary>
    public const string AuditFile = "audit.json";

    /// <summary>The name of the file that makes a folder a share of a run.</summary>
    public const string ShareFile = "share.json";

    // These stand in what the writer leaves behind: the layout's name, where recordings wait for the end of a run, and the ending of files not yet whole.
    private const string FormatStart = "channelaudit-audit/";
    private const string ShareStart = "channelaudit-share/";
    private const string UnfinishedStart = ".unfinished/";
    private const string PartialEnding = ".channelaudit-partial";

    /// <summary>Refuses a place that is taken; a new or empty folder, and an audit that stands there, are fine.</summary>
    /// <param name="folder">The folder; nothing is created.</param>
    /// <exception cref="ChannelAuditException">When it is a file, holds something else, or cannot be listed.</exception>
    public static void Check(string folder)
    {
        if (File.Exists(folder))
        {
            throw RunErrors.NotAFolder(folder);
        }

        if (Directory.Exists(folder) && !IsAudit(folder) && FirstForeign(folder) is { } found)
        {
            throw RunErrors.NotAnAudit(folder, found);
        }
    }

    /// <summary>Whether a folder holds an audit of ours.</summary>
    /// <param name="folder">The folder.</param>
    public static bool IsAudit(string folder) => IsOf(Path.Combine(folder, AuditFile), FormatStart);

    /// <summary>Whether a folder holds an audit or a share of ours: no recordings are searched for in it.</summary>
    /// <param name="folder">The folder.</param>
    public static bool IsOfARun(string folder) => IsAudit(folder) || IsOf(Path.Combine(folder, ShareFile), ShareStart);

    private static bool IsOf(string file, string start)
    {
        if (!File.Exists(file))
        {
            return false;
        }

        try
        {
            using JsonDocument document = StrictJson.Parse(PlainFile.ReadAllBytes(file));
            return document.RootElement.ValueKind == JsonValueKind.Object
                && document.RootElement.TryGetProperty("format", out JsonElement format)
                && format.ValueKind == JsonValueKind.String
                && format.GetString()!.StartsWith(start, StringComparison.Ordinal);
        }
        catch (Exception fault) when (fault is JsonException or IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>The first file that is none of ours, as a path below the folder; null when there is none.</summary>
    /// <remarks>It stops at the first, and follows no link: whoever names a home folder by a slip must not wait until all of it is listed.</remarks>
    /// <param name="folder">The folder; it is there.</param>
    /// <exception cref="ChannelAuditException">When it cannot be listed.</exception>
    public static string? FirstForeign(string folder)
    {
        try
        {
            return FirstForeign(new DirectoryInfo(folder), string.Empty);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw RunErrors.CannotList(folder, fault);
        }
    }

    private static string? FirstForeign(DirectoryInfo folder, string path)
    {
        List<DirectoryInfo> below = [];
        foreach (FileSystemInfo entry in folder.EnumerateFileSystemInfos().OrderBy(entry => entry.Name, StringComparer.Ordinal))
        {
            if (entry is DirectoryInfo { LinkTarget: null } inner)
            {
                below.Add(inner);
            }
            else if (!IsOurs(path + entry.Name))
            {
                return path + entry.Name;
            }
        }

        return below.Select(inner => FirstForeign(inner, $"{path}{inner.Name}/")).FirstOrDefault(found => found is not null);
    }

    private static bool IsOurs(string path) => path.EndsWith(PartialEnding, StringComparison.Ordinal) || path.StartsWith(UnfinishedStart, StringComparison.Ordinal) || Ledger.IsFileOfIts(path);
}
