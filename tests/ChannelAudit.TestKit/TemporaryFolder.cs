namespace ChannelAudit.TestKit;

/// <summary>A folder of its own for one test, removed with everything in it.</summary>
public sealed class TemporaryFolder : IDisposable
{
    /// <summary>The folder's full path.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("channelaudit-test-").FullName;

    /// <summary>Writes a file, and the folders above it.</summary>
    /// <param name="relative">Path below the folder, with forward slashes.</param>
    /// <param name="content">Its text.</param>
    /// <returns>The full path.</returns>
    public string Write(string relative, string content = "")
    {
        string path = In(relative);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, content);
        return path;
    }

    /// <summary>The full path of something in the folder.</summary>
    /// <param name="relative">Path below the folder, with forward slashes.</param>
    public string In(string relative) => Path.Combine(Folder, relative);

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
