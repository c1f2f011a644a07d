using ChannelAudit.Core.Tests.Recordings.Edf;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings;

public sealed class RecordingOpenerTests
{
    [Theory]
    [InlineData(false, "EDF+C")]
    [InlineData(true, "BDF+C")]
    public void TheFormatIsToldByContentNotByName(bool is24Bit, string format)
    {
        using MadeEdf file = new(MadeEdf.Small() with { Is24Bit = is24Bit });
        string renamed = Path.ChangeExtension(file.Path, ".csv");
        File.Move(file.Path, renamed);
        using Recording recording = RecordingOpener.Open(renamed, new ReadOptions());

        Assert.Equal((format, "made.csv"), (recording.Format, recording.FileName));
    }

    [Fact]
    public void AMissingFileIsSaid()
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => RecordingOpener.Open("nowhere/made.edf", new ReadOptions()).Dispose());

        Assert.Equal(("nowhere/made.edf: there is no such file", "check the spelling of the path"), (fault.Message, fault.Hint));
    }

    [Fact]
    public void AFolderIsSaid()
    {
        using MadeEdf file = new();
        string folder = Path.GetDirectoryName(file.Path)!;
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => RecordingOpener.Open(folder, new ReadOptions()).Dispose());

        Assert.Equal(folder + ": is a folder, not a recording", fault.Message);
    }

    [Fact]
    public void AnEmptyFileIsSaid()
    {
        using MadeEdf file = new();
        File.WriteAllBytes(file.Path, []);
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => RecordingOpener.Open(file.Path, new ReadOptions()).Dispose());

        Assert.Equal("made.edf: the file is empty", fault.Message);
    }

    [Theory]
    [InlineData(4096)]
    [InlineData(100_000)]
    public void ZerosWhereTheHeaderWasAreSaid(int zeros)
    {
        using MadeEdf file = new();
        File.WriteAllBytes(file.Path, [.. new byte[zeros], 7, 0, 9]);
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => RecordingOpener.Open(file.Path, new ReadOptions()).Dispose());

        Assert.Equal(FormattableString.Invariant($"made.edf: not a recording: begins with {zeros} zero bytes: the header is lost"), fault.Message);
        Assert.StartsWith("copy the file again", fault.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void APictureIsNoRecording()
    {
        using MadeEdf file = new();
        File.WriteAllBytes(file.Path, [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13]);
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => RecordingOpener.Open(file.Path, new ReadOptions()).Dispose());

        Assert.StartsWith("made.edf: not a recording: ", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0       1.5     2.5\n", false)]
    [InlineData("0;1;2\n", false)]
    [InlineData("0       X X X X", true)]
    [InlineData("\u00FFABCDEFGX", true)]
    [InlineData("\u00FF\u00FEt\0i\0m\0", false)]
    [InlineData("0", false)]
    [InlineData("", false)]
    public void TheFirstBytesTellEdfFromText(string first, bool isEdf) =>
        Assert.Equal(isEdf, EdfReader.Recognises(System.Text.Encoding.Latin1.GetBytes(first)));
}
