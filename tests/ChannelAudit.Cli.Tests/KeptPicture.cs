using ChannelAudit.TestKit;
using SkiaSharp;
using Xunit;

namespace ChannelAudit.Cli.Tests;

/// <summary>Compares a picture with one that is kept in the repository.</summary>
internal static class KeptPicture
{
    private const int LeastVisible = 24;
    private const int MostDifferent = 20;

    /// <summary>Fails when they differ visibly; writes the file first when the environment asks for it, but never in CI.</summary>
    /// <param name="file">Path below the repository's root, with forward slashes.</param>
    /// <param name="drawn">The picture as the program draws it.</param>
    public static void Match(string file, byte[] drawn)
    {
        string kept = Path.GetFullPath(RepositoryRoot.Fixture("../" + file));
        if (Golden.IsRewriteAsked)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
            File.WriteAllBytes(kept, drawn);
        }

        Assert.True(IsSame(kept, drawn), $"{file} is out of date; set CHANNELAUDIT_GOLDEN=rewrite to draw it anew, then look at it.");
    }

    // Decoded, with a little room: on another processor an edge may come out a shade lighter.
    private static bool IsSame(string file, byte[] bytes)
    {
        if (!File.Exists(file))
        {
            return false;
        }

        using SKBitmap kept = SKBitmap.Decode(file);
        using SKBitmap drawn = SKBitmap.Decode(bytes);
        return (kept.Width, kept.Height) == (drawn.Width, drawn.Height)
            && kept.Pixels.Zip(drawn.Pixels).Count(pair => Difference(pair.First, pair.Second) > LeastVisible) <= MostDifferent;
    }

    private static int Difference(SKColor one, SKColor other) =>
        Math.Max(Math.Abs(one.Red - other.Red), Math.Max(Math.Abs(one.Green - other.Green), Math.Abs(one.Blue - other.Blue)));
}
