using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>By what it is seen that a file was changed, replaced or removed, without reading it again.</summary>
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

    /// <summary>Refuses what was made from a file that is not as it was.</summary>
    /// <param name="path">The path.</param>
    /// <exception cref="ChannelAuditException">When its state is another one.</exception>
    public void RequireStill(string path)
    {
        FileState now = Of(path);
        if (now != this)
        {
            throw now.Bytes < 0 ? RunErrors.RemovedMeanwhile(path) : RunErrors.ChangedMeanwhile(path);
        }
    }
}
