using System.Globalization;
using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis;

/// <summary>The cells of one column of text.</summary>
/// <param name="made">The recording.</param>
/// <param name="site">The site's name.</param>
/// <param name="decimalSign">The decimal sign.</param>
internal sealed class SiteText(MadeRecording made, string site, char decimalSign)
{
    private readonly Channel channel = made.ChannelOf(site);
    private readonly Dictionary<int, string> known = [];
    private int stretch;

    /// <summary>The cell of a sample; samples are asked for in order.</summary>
    internal string At(int sample)
    {
        while (stretch < channel.Stretches.Length && sample >= channel.Stretches[stretch].End)
        {
            stretch++;
        }

        if (stretch == channel.Stretches.Length || sample < channel.Stretches[stretch].Start)
        {
            return "NaN";
        }

        int code = made.CodesOf(site)[sample];
        if (!known.TryGetValue(code, out string? text))
        {
            // Fifteen digits: the code's decimal value rather than the last bits of the product.
            text = (code * made.Plan.Amplifier.StepUv).ToString("G15", CultureInfo.InvariantCulture).Replace('.', decimalSign);
            known.Add(code, text);
        }

        return text;
    }
}
