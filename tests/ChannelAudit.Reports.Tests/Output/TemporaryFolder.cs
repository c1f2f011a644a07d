namespace ChannelAudit.Reports.Tests.Output;

/// <summary>A folder of a test, gone afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("channelaudit-").FullName;

    public string[] Files() =>
    [
        .. Directory.EnumerateFiles(Path, "*", SearchOption.AllDirectories)
            .Select(file => System.IO.Path.GetRelativePath(Path, file).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    public void Put(string relative, string text)
    {
        string file = System.IO.Path.Combine(Path, relative);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }

    public string Read(string relative) => File.ReadAllText(System.IO.Path.Combine(Path, relative));

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
