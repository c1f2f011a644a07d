using System.Globalization;
using System.Security.Cryptography;
using ChannelAudit.Reports.Figures;
using SkiaSharp;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>Says what the pictures hash to, in this process or, through <c>Main</c>, in another one.</summary>
public static class FigureHashes
{
    /// <summary>One hash a sample, one a line.</summary>
    public static string Of() => string.Join(
        '\n',
        RibbonSamples.All().Select(sample => SessionRibbon.Render(sample.Recording, FigureSize.Small))
            .Append(ChannelSheet.Render(SheetSamples.Faulty(), SheetSamples.Faulty().Channels[0], FigureSize.Small))
            .Append(PairSheet.Render(PairSamples.Of("joined").Recording, PairSamples.Of("joined").Pair, FigureSize.Small))
            .Append(PilotFigure.Render(PilotSamples.Of("bridge")))
            .Append(GalleryPlateTests.Plate("clipping"))
            .Select(picture => Convert.ToHexString(SHA256.HashData(picture))));

    /// <summary>Prints how many characters the default font of the machine has, then the hashes.</summary>
    public static int Main()
    {
        System.Console.Out.WriteLine(SKTypeface.Default.GlyphCount.ToString(CultureInfo.InvariantCulture));
        System.Console.Out.WriteLine(Of());
        return 0;
    }
}
