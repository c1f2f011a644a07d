using System.Globalization;
using System.Text;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Random;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>Rows that are read by their bytes give what the splitter gives, which reads all of a text in UTF-16.</summary>
public sealed class PlainRowsTests
{
    public static TheoryData<string, string> Texts => new()
    {
        { "plain", Table("{0},{1},{2}") },
        { "CRLF", Table("{0},{1},{2}", "\r\n") },
        { "blanks around", Table("{0} , {1}, {2}\t") },
        { "a separator more", Table("{0},{1},{2},") },
        { "quoted now and then", Table("{0},{1},{2}", odd: "{0},\"{1}\",{2}") },
        { "empty cells", Table("{0},{1},{2}", odd: "{0},,{2}") },
        { "words for missing", Table("{0},{1},{2}", odd: "{0},n/a,NaN") },
        { "exponents", Table("{0},{1},{2}", odd: "{0},1.5e-3,-2E2") },
        { "signs and bare points", Table("{0},{1},{2}", odd: "{0},+3,-.5") },
        { "more digits than a double holds", Table("{0},{1},{2}", odd: "{0},0.12345678901234567891,9007199254740993") },
        { "blank lines", Table("{0},{1},{2}", odd: "{0},{1},{2}\n\n  ") },
        { "no last line end", Table("{0},{1},{2}").TrimEnd('\n') },
        { "a ragged row", Table("{0},{1},{2}", odd: "{0},{1}") },
        { "a cell too many", Table("{0},{1},{2}", odd: "{0},{1},{2},4") },
        { "a word", Table("{0},{1},{2}", odd: "{0},{1},lost") },
        { "a sign that is not ASCII", Table("{0},{1},{2}", odd: "{0},{1},∞") },
        { "time that stands", Table("{0},{1},{2}", odd: "0.001,{1},{2}") },
        { "an open quote", Table("{0},{1},{2}", odd: "{0},\"{1},{2}") },
        { "decimal commas", Table("{0};{1};{2}").Replace('.', ',') },
        { "tabs", Table("{0}\t{1}\t{2}") },
        { "carriage returns alone", Table("{0},{1},{2}", "\r") },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void BytesAndSplitterAgree(string name, string text)
    {
        Assert.NotEmpty(name);
        Assert.Equal(Outcome(text, Encoding.Unicode), Outcome(text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)), StringComparer.Ordinal);
        Assert.Equal(Outcome(text, Encoding.Unicode), Outcome(text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)), StringComparer.Ordinal);
    }

    [Fact]
    public void EveryNumberIsTheDoubleNearestToIt()
    {
        Pcg32 random = new(7);
        string[] numbers = [.. Enumerable.Range(0, 3000).Select(_ => Number(random))];
        string text = "time,a\n" + string.Concat(numbers.Select((number, i) => string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{number}\n")));

        using TextCase opened = TextCase.Open(text);

        Assert.Equal([.. numbers.Select(number => double.Parse(number, CultureInfo.InvariantCulture))], opened.Samples("a"));
    }

    private static string Number(Pcg32 random)
    {
        int digits = 1 + (int)(random.NextDouble() * 18);
        char[] all = [.. Enumerable.Range(0, digits).Select(_ => (char)('0' + (int)(random.NextDouble() * 10)))];
        int point = (int)(random.NextDouble() * (digits + 1));
        return (random.NextDouble() < 0.5 ? "-" : string.Empty) + new string(all).Insert(point, ".");
    }

    private static string Table(string row, string newLine = "\n", string? odd = null)
    {
        StringBuilder text = new(string.Format(CultureInfo.InvariantCulture, row, "time", "a", "b").Trim(',') + newLine);
        for (int i = 0; i < 3000; i++)
        {
            bool isOdd = odd is not null && i is 700 or 701 or 1500;
            text.AppendFormat(CultureInfo.InvariantCulture, isOdd ? odd! : row, (i / 1000.0).ToString("0.000", CultureInfo.InvariantCulture), (i % 37) - 18.5, i % 11 / 4.0);
            text.Append(newLine);
        }

        return text.ToString();
    }

    private static string Outcome(string text, Encoding encoding)
    {
        try
        {
            using TextCase opened = TextCase.Open(text, encoding: encoding);
            StringBuilder all = new();
            foreach (Channel channel in opened.Recording.Channels)
            {
                all.Append(CultureInfo.InvariantCulture, $"{channel.Label} {channel.NotAudited} {channel.Rate} {channel.Step:R} {string.Join(' ', channel.Stretches)}\n");
                double[] samples = channel.NotAudited is null ? opened.Samples(channel.Label) : [];
                all.AppendJoin(' ', samples.Select(sample => sample.ToString("R", CultureInfo.InvariantCulture))).Append('\n');
            }

            return all.AppendJoin('\n', opened.Warnings()).ToString();
        }
        catch (ChannelAuditException fault)
        {
            return fault.Message + fault.Hint;
        }
    }
}
