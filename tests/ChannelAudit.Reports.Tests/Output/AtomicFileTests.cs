using ChannelAudit.Reports.Output;

namespace ChannelAudit.Reports.Tests.Output;

public sealed class AtomicFileTests
{
    [Fact]
    public void TheFileIsReplacedAndNothingElseStays()
    {
        using TemporaryFolder folder = new();
        folder.Put("do-next.txt", "old, and longer than the new one");

        AtomicFile.Write(Path.Combine(folder.Path, "do-next.txt"), "new"u8);

        Assert.Equal("new", folder.Read("do-next.txt"));
        Assert.Equal(["do-next.txt"], folder.Files());
    }

    [Fact]
    public void AFolderInPlaceOfTheFileIsAFaultAndTheTemporaryFileIsGone()
    {
        using TemporaryFolder folder = new();
        folder.Put("do-next.txt/inside", "x");

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(
            () => AtomicFile.Write(Path.Combine(folder.Path, "do-next.txt"), "new"u8));

        Assert.StartsWith("do-next.txt: cannot be written", fault.Message, StringComparison.Ordinal);
        Assert.Equal(["do-next.txt/inside"], folder.Files());
    }

    [Fact]
    public void TheSamePathTwiceIsAMistake()
    {
        using TemporaryFolder folder = new();
        using OutputBatch batch = new(folder.Path);
        batch.Add("a.tsv", "1"u8);

        Assert.Throws<ArgumentException>(() => batch.Add("a.tsv", "2"u8));
    }
}
