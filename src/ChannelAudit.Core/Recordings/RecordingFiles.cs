using ChannelAudit.Text;
using Microsoft.Win32.SafeHandles;

namespace ChannelAudit.Recordings;

/// <summary>Opens files for reading, with messages for people when that fails.</summary>
internal static class RecordingFiles
{
    /// <summary>Opens a file that may still be written by its recorder.</summary>
    /// <param name="path">The path as the user gave it.</param>
    /// <exception cref="ChannelAuditException">When there is no such file, it is a folder, or it cannot be opened.</exception>
    public static SafeFileHandle OpenHandle(string path)
    {
        if (Directory.Exists(path))
        {
            throw RecordingErrors.IsAFolder(path);
        }

        if (!File.Exists(path))
        {
            throw RecordingErrors.Missing(path);
        }

        try
        {
            if (PlainFile.IsEmpty(path))
            {
                throw RecordingErrors.Empty(Path.GetFileName(path));
            }

            return File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, FileOptions.None);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw RecordingErrors.CannotOpen(Path.GetFileName(path), exception);
        }
    }
}
