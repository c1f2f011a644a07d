using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>By what it is seen that a file may have been changed, replaced or removed, without reading it again.</summary>
/// <param name="Bytes">Its length; -1 when it is not there.</param>
/// <param name="WrittenUtc">When it was written last, by its file system.</param>
public readonly record struct FileState(long Bytes, DateTime WrittenUtc)
{
    /// <summary>The state of a file now; links are followed.</summary>
    /// <param name="path">The path.</param>
    /// <exception cref="ChannelAuditException">When it may not be looked at.</exception>
    public static FileState Of(string path)
    {
        try
        {
            FileInfo file = PlainFile.Target(path);
            return file.Exists ? new FileState(file.Length, file.LastWriteTimeUtc) : new FileState(-1, default);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw RunErrors.CannotRead(path, fault);
        }
    }

    /// <summary>Refuses what was made from a file that is not as it was. Another time or length is looked into: with the same bytes, as after a touch, nothing has changed.</summary>
    /// <param name="path">The path.</param>
    /// <param name="sha256">The SHA-256 of its bytes then, in lower-case hexadecimal.</param>
    /// <exception cref="ChannelAuditException">When its bytes are others, it is gone, or cannot be read.</exception>
    public void RequireStill(string path, string sha256)
    {
        FileState now = Of(path);
        if (now.Bytes < 0)
        {
            throw RunErrors.RemovedMeanwhile(path);
        }

        if (now != this && !string.Equals(InputKey.HashOf(path), sha256, StringComparison.Ordinal))
        {
            throw RunErrors.ChangedMeanwhile(path);
        }
    }
}
