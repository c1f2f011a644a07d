using System.Text;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary>A file that must not be there yet; it appears whole or not at all.</summary>
internal static class NewFile
{
    private const string PartialEnding = ".channelaudit-partial";

    /// <summary>Refuses a place that is taken, or in a folder that is not there.</summary>
    /// <param name="path">The place.</param>
    /// <param name="option">The option that named it.</param>
    /// <exception cref="ChannelAuditException">When it is.</exception>
    public static void Check(string path, FileOption option)
    {
        if (Path.Exists(path))
        {
            throw UsageErrors.IsThere(path, option);
        }

        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder && !Directory.Exists(folder))
        {
            throw UsageErrors.NoFolderFor(path, option);
        }
    }

    /// <summary>Writes it.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses, or it is there in the meantime.</exception>
    public static void Write(string path, string text, FileOption option) => Write(path, Encoding.UTF8.GetBytes(text), option);

    /// <summary>Writes it.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses, or it is there in the meantime.</exception>
    public static void Write(string path, byte[] bytes, FileOption option)
    {
        string partial = path + PartialEnding;
        try
        {
            using (FileStream stream = new(partial, FileMode.Create, FileAccess.Write))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            File.Move(partial, path, overwrite: false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Remove(partial);
            throw Path.Exists(path) ? UsageErrors.IsThere(path, option) : UsageErrors.CannotWrite(path, option, fault);
        }
    }

    private static void Remove(string partial)
    {
        try
        {
            File.Delete(partial);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The message about the file itself says more.
        }
    }
}
