using System.Text;
using System.Text.Json;
using ChannelAudit.Text;
using Xunit;

namespace ChannelAudit.Core.Tests.Text;

public sealed class StrictJsonTests
{
    [Theory]
    [InlineData(@"{""a"": ""\ud83d\ude00 and \u00b5""}")]
    [InlineData(@"{""a"": ""\\ud83d""}")]
    [InlineData(@"{""a"": ""µ 😀""}")]
    public void WholeCharactersAreRead(string text)
    {
        using JsonDocument document = StrictJson.Parse(Encoding.UTF8.GetBytes(text));

        Assert.NotNull(document.RootElement.GetProperty("a").GetString());
    }

    [Theory]
    [InlineData("{\n\"a\": \"\\ud83d\"}", 1)]
    [InlineData("{\n\n\"a\\uDE00\": 1}", 2)]
    public void HalfOfASurrogatePairIsAFaultOfTheFile(string text, long line)
    {
        JsonException fault = Assert.Throws<JsonException>(() => StrictJson.Parse(Encoding.UTF8.GetBytes(text)));

        Assert.Equal(line, fault.LineNumber);
    }

    [Fact]
    public void AByteThatIsNoUtf8IsAFaultOfTheFile()
    {
        byte[] bytes = [.. "{\n\"a\": \""u8, 0x95, .. "\"}"u8];

        JsonException fault = Assert.Throws<JsonException>(() => StrictJson.Parse(bytes));

        Assert.Equal(1, fault.LineNumber);
    }

    [Fact]
    public void CommentsAndCommasAreToleratedWhereAsked()
    {
        JsonDocumentOptions lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

        using JsonDocument document = StrictJson.Parse("{\"a\": \"\\ud83d\\ude00\", // said\n}"u8.ToArray(), lenient);

        Assert.Equal("😀", document.RootElement.GetProperty("a").GetString());
    }
}
