using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ChannelAudit.Events;

namespace ChannelAudit.Runs;

/// <summary>One hash over everything that a recording's result depends on: equal keys, equal results.</summary>
public static class InputKey
{
    /// <summary>The SHA-256 of a file's bytes in lower-case hexadecimal.</summary>
    /// <exception cref="ChannelAuditException">When it cannot be read.</exception>
    public static string HashOf(string path)
    {
        try
        {
            return FileHash.Of(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw RunErrors.CannotRead(path, fault);
        }
    }

    /// <summary>The key of a recording.</summary>
    /// <param name="entry">The recording.</param>
    /// <param name="sha256">The hash of its bytes.</param>
    /// <param name="others">Hashes of what all recordings of the run are audited with, named: version, criteria, setup, events, readings.</param>
    /// <exception cref="ChannelAuditException">When a companion cannot be read.</exception>
    /// <remarks>The companions that the BIDS standard puts beside a recording count with their bytes; the path counts, since outputs name it.</remarks>
    public static string Of(RecordingEntry entry, string sha256, ImmutableArray<(string Name, string? Hash)> others)
    {
        StringBuilder text = new();
        Add(text, "path", entry.RelativePath);
        Add(text, "recording", sha256);
        foreach ((string name, string? hash) in others)
        {
            Add(text, name, hash);
        }

        foreach (string companion in BidsCompanions.FilesOf(entry.FilePath))
        {
            Add(text, Path.GetFileName(companion), HashOf(companion));
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    // Length first: no name can run into the next.
    private static void Add(StringBuilder text, string name, string? value) =>
        text.Append(name.Length).Append(':').Append(name).Append('=').Append(value?.Length ?? -1).Append(':').Append(value).Append('\n');
}
