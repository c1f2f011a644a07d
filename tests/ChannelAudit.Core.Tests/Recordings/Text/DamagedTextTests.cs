using System.Globalization;
using ChannelAudit.Recordings;
using CsCheck;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>However a text is damaged, it is read or refused with a message; nothing else comes out.</summary>
public sealed class DamagedTextTests
{
    private const string Signs = "0123456789.,;:\t\n\r \"'eE-+#%nNaA/µ∞\0";

    private static readonly string Good = "Device: A\nRate,2000\n\ntime,a (mV),b,marker\n" + TextCase.Rows(
        60, i => string.Create(CultureInfo.InvariantCulture, $"{i * 0.002:0.000},{i % 9 / 10.0:0.0},{-i},{(i > 30 ? "\"x, y\"" : "rest")}"));

    [Fact]
    public void DamageIsReadOrRefused() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Gen.Int[0, Signs.Length - 1]).Array[1, 6].Sample(
            damage =>
            {
                char[] text = Good.ToCharArray();
                foreach ((int at, int sign) in damage)
                {
                    text[at] = Signs[sign];
                }

                AssertReadOrRefused(new string(text));
            },
            iter: 400,
            threads: 1);

    [Fact]
    public void AnyCutIsReadOrRefused()
    {
        for (int length = 0; length < Good.Length; length += 7)
        {
            AssertReadOrRefused(Good[..length]);
        }
    }

    private static void AssertReadOrRefused(string text)
    {
        try
        {
            using TextCase opened = TextCase.Open(text, new ReadOptions(SamplingHz: 500m));
            foreach (Channel channel in opened.Recording.Channels)
            {
                double[] values = opened.Samples(channel.Label);
                Assert.All(values, value => Assert.True(double.IsFinite(value)));
                Assert.Equal(values.Length, channel.StoredLength);
                Assert.True(channel.TimelineLength >= channel.StoredLength);
                Assert.True(channel.Step > 0);
            }
        }
        catch (ChannelAuditException refused)
        {
            Assert.DoesNotContain('\n', refused.Message);
            Assert.StartsWith("rec.csv", refused.Message, StringComparison.Ordinal);
            Assert.NotEmpty(refused.Hint);
        }
    }
}
