using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Verifying;

/// <summary>A folder of the system's temporary ones, gone with everything in it when it is disposed.</summary>
internal sealed class ScratchFolder : IDisposable
{
    private ScratchFolder(string path) => FolderPath = path;

    /// <summary>Where it is.</summary>
    public string FolderPath { get; }

    /// <summary>Whether something could not be written into it: then what was not made says nothing of the audit.</summary>
    public bool IsRefused { get; private set; }

    /// <summary>Makes one.</summary>
    /// <param name="never">Folders that nothing may be written into.</param>
    /// <exception cref="ChannelAuditException">When the system's temporary folder lies in one of them, or cannot be written.</exception>
    public static ScratchFolder Outside(params ReadOnlySpan<string?> never)
    {
        foreach (string? folder in never)
        {
            if (folder is not null && IsIn(Path.GetTempPath(), folder))
            {
                throw VerifyErrors.ScratchInside(folder);
            }
        }

        try
        {
            return new ScratchFolder(Directory.CreateTempSubdirectory("channelaudit-verify-").FullName);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw VerifyErrors.NoScratch(fault);
        }
    }

    /// <summary>A path in it.</summary>
    public string In(string relative) => Path.Combine(FolderPath, relative);

    /// <summary>Writes a file that a run was made with, under its own name.</summary>
    /// <returns>Where it is.</returns>
    /// <exception cref="ChannelAuditException">When the system's temporary folder cannot be written.</exception>
    public string Put(RunInput input)
    {
        string path = In(Path.Combine("inputs", input.Role, input.FileName));
        Write(path, input.Bytes.AsSpan());
        return path;
    }

    /// <summary>Copies a file.</summary>
    /// <param name="file">The file.</param>
    /// <param name="to">A path in it.</param>
    /// <exception cref="ChannelAuditException">When the system's temporary folder cannot be written.</exception>
    /// <exception cref="IOException">When the file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">When the file may not be read.</exception>
    public void Copy(string file, string to) => Write(to, PlainFile.ReadAllBytes(file));

    /// <inheritdoc/>
    public void Dispose()
    {
        try
        {
            Directory.Delete(FolderPath, recursive: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The system clears its temporary folder; the answer stands all the same.
        }
    }

    private void Write(string path, ReadOnlySpan<byte> bytes)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, bytes);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            IsRefused = true;
            throw VerifyErrors.NoScratch(fault);
        }
    }

    private static bool IsIn(string path, string folder)
    {
        string below = Path.GetRelativePath(Path.GetFullPath(folder), Path.GetFullPath(path));
        return !Path.IsPathRooted(below) && below is not ".." && !below.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal);
    }
}
