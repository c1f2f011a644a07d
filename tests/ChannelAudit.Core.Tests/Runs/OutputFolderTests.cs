using ChannelAudit.Runs;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Runs;

public sealed class OutputFolderTests : IDisposable
{
    private const string Hint = "give an empty or a new folder with --out";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void ANewFolderIsFineAndNotCreated()
    {
        OutputFolder.Check(_folder.In("new"));

        Assert.False(Directory.Exists(_folder.In("new")));
    }

    [Fact]
    public void AnEmptyFolderIsFine() => OutputFolder.Check(_folder.Folder);

    [Fact]
    public void LeftOversOfABrokenRunAreFine()
    {
        _folder.Write("recordings/P07/.result.json.12.channelaudit-partial");

        OutputFolder.Check(_folder.Folder);
    }

    [Fact]
    public void AnAuditIsBroughtUpToDate()
    {
        _folder.Write("audit.json", "{ \"format\": \"channelaudit-audit/1\", \"version\": \"0.1.0\" }");
        _folder.Write("my-notes.txt");

        OutputFolder.Check(_folder.Folder);
        Assert.True(OutputFolder.IsAudit(_folder.Folder));
    }

    [Fact]
    public void AnyOtherFolderIsRefused()
    {
        _folder.Write("thesis/chapter1.docx");

        Faults.AreExactly(
            $"{_folder.Folder}: not empty and not an audit: 'thesis/chapter1.docx' is in it", Hint, () => OutputFolder.Check(_folder.Folder));
    }

    [Fact]
    public void TheFirstForeignFileIsEnoughAndNoLinkIsFollowed()
    {
        _folder.Write("a/mine.txt");
        Directory.CreateSymbolicLink(_folder.In("a/back"), _folder.Folder);

        Assert.Equal("a/back", OutputFolder.FirstForeign(_folder.Folder));
    }

    [Theory]
    [InlineData("{ \"format\": \"somebody-else/1\" }")]
    [InlineData("{ \"format\": 1 }")]
    [InlineData("[]")]
    [InlineData("not JSON")]
    [InlineData("")]
    public void AnAuditOfSomebodyElseIsRefused(string json)
    {
        _folder.Write("audit.json", json);

        Faults.AreExactly($"{_folder.Folder}: not empty and not an audit: 'audit.json' is in it", Hint, () => OutputFolder.Check(_folder.Folder));
    }

    [Fact]
    public void AFileThereIsRefused()
    {
        string path = _folder.Write("audit");

        Faults.AreExactly($"{path}: a file, not a folder", Hint, () => OutputFolder.Check(path));
    }
}
