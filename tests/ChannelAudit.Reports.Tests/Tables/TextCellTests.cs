using ChannelAudit.Reports.Tables;

namespace ChannelAudit.Reports.Tests.Tables;

public sealed class TextCellTests
{
    // Quoting as in RFC 4180 with the tab as separator, which is what the BIDS specification asks for; the apostrophe is common practice.
    [Theory]
    [InlineData(null, "n/a")]
    [InlineData("", "n/a")]
    [InlineData("happy", "happy")]
    [InlineData("EMG cheek; left", "EMG cheek; left")]
    [InlineData("a\tb", "\"a\tb\"")]
    [InlineData("a\nb", "\"a\nb\"")]
    [InlineData("a\r\nb", "\"a\nb\"")]
    [InlineData("a\rb", "\"a\nb\"")]
    [InlineData("3\" wide", "\"3\"\" wide\"")]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-happy", "'-happy")]
    [InlineData("@sum", "'@sum")]
    [InlineData("\uFF1D1", "'\uFF1D1")]
    [InlineData("\t=1", "\"'\t=1\"")]
    [InlineData("'=1", "''=1")]
    [InlineData("'rest'", "'rest'")]
    [InlineData("a=b", "a=b")]
    [InlineData("a\0b\u001bc", "a\uFFFDb\uFFFDc")]
    public void TextStaysOneCellAndStaysText(string? text, string expected) => Assert.Equal(expected, TextCell.Escape(text));

    [Fact]
    public void NoHostileLabelLeavesItsCell()
    {
        foreach (string label in SampleResults.HostileLabels)
        {
            string cell = TextCell.Escape(label);
            string inside = cell.StartsWith('"') ? cell[1..^1].Replace("\"\"", string.Empty, StringComparison.Ordinal) : cell;

            Assert.False(inside.Contains('"', StringComparison.Ordinal), cell);
            Assert.True(cell.StartsWith('"') || !cell.Any(character => character is '\t' or '\n'), cell);
            Assert.False(inside[0] is '=' or '+' or '-' or '@' or '\t', cell);
        }
    }
}
