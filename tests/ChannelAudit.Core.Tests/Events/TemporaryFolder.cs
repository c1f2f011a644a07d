using System.Text;

namespace ChannelAudit.Core.Tests.Events;

/// <summary>A folder of its own for one test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("channelaudit-test-");

    public string FullName => _folder.FullName;

    public string Write(string name, string text, Encoding? encoding = null)
    {
        string path = Path.Combine(_folder.FullName, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text, encoding ?? new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        return path;
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
