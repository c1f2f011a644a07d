using ChannelAudit.Reports.Console;
using Xunit;

namespace ChannelAudit.Cli.Tests;

public sealed class TerminalLookTests
{
    private const int Utf8 = 65001;
    private const int Latin1 = 28591;

    [Theory]
    [InlineData(true, null, "xterm", true)]
    [InlineData(true, "", "xterm", true)]
    [InlineData(true, null, null, true)]
    [InlineData(true, "1", "xterm", false)]
    [InlineData(true, null, "dumb", false)]
    [InlineData(false, null, "xterm", false)]
    public void ColourIsForTerminalsThatWantIt(bool isTerminal, string? noColour, string? term, bool colour)
    {
        TerminalStyle style = TerminalLook.Of(isTerminal, name => name switch { "NO_COLOR" => noColour, "TERM" => term, _ => null }, Utf8, () => 80);

        Assert.Equal(colour, style.Colour);
    }

    [Theory]
    [InlineData(true, 60, 60)]
    [InlineData(true, 0, 100)]
    [InlineData(true, -1, 100)]
    [InlineData(false, 60, 100)]
    public void OnlyATerminalSaysHowWideLinesAre(bool isTerminal, int width, int columns) =>
        Assert.Equal(columns, TerminalLook.Of(isTerminal, _ => null, Utf8, () => width).Columns);

    [Theory]
    [InlineData(Utf8, false)]
    [InlineData(Latin1, true)]
    public void WithoutUtf8TheOutputIsAscii(int codePage, bool ascii) => Assert.Equal(ascii, TerminalLook.Of(true, _ => null, codePage, () => 80).Ascii);
}
