using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Gallery;

/// <summary>The gallery in <c>docs/gallery</c> is what the command makes today: the texts exactly, the pictures to the eye.</summary>
public sealed class GalleryTests : IDisposable
{
    private const long LargestPng = 130_000;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task TheKeptGalleryIsWhatTheCommandMakesEveryTime()
    {
        string made = _folder.In("gallery");
        CommandRun run = await CommandRun.Of("explain", "--gallery", made);
        Dictionary<string, byte[]> files = Names(made).ToDictionary(name => name, name => File.ReadAllBytes(Path.Combine(made, name)), StringComparer.Ordinal);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Equal(FormattableString.Invariant($"Written to {made}: README.md and {files.Count - 1} pictures\n"), run.Output);
        Golden.Match("../docs/gallery/README.md", await File.ReadAllTextAsync(Path.Combine(made, "README.md")));
        Assert.All(files.Where(file => file.Key.EndsWith(".png", StringComparison.Ordinal)), file =>
        {
            Assert.InRange(file.Value.Length, 1, LargestPng);
            KeptPicture.Match("docs/gallery/" + file.Key, file.Value);
        });
        Assert.Equal(Names(Path.GetFullPath(RepositoryRoot.Fixture("../docs/gallery"))), Names(made), StringComparer.Ordinal);

        // Over itself, with a changed text: the same bytes.
        await File.AppendAllTextAsync(Path.Combine(made, "README.md"), "changed");
        Assert.Equal(ExitCode.Done, (await CommandRun.Of("explain", "--gallery", made)).Code);
        Assert.All(files, file => Assert.Equal(file.Value, File.ReadAllBytes(Path.Combine(made, file.Key))));
    }

    [Fact]
    public async Task AFolderWithSomethingElseIsRefusedAndLeftAlone()
    {
        _folder.Write("mine/README.md", "# Mine\n");
        CommandRun run = await CommandRun.Of("explain", "--gallery", _folder.In("mine"));

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal($"error: {_folder.In("mine")}: not empty and not an earlier gallery\nhint: give a new or an empty folder\n", run.Error);
        Assert.Equal(["README.md"], Names(_folder.In("mine")));
    }

    private static string[] Names(string folder) => [.. Directory.EnumerateFileSystemEntries(folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
}
