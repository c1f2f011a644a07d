using ChannelAudit.TestKit;
using SkiaSharp;
using Xunit;

namespace ChannelAudit.Cli.Tests.Demo;

/// <summary>The pictures in the project's README and guides are those that the demo's sessions give.</summary>
public sealed class ReadmePictureTests(DemoRun demo) : IClassFixture<DemoRun>
{
    private const int LeastVisible = 24;
    private const int MostDifferent = 20;

    [Theory]
    [InlineData("K07", "session-ribbon.png", "channel-1-cheek.png")]
    [InlineData("K11", "pair-1-3-cheek-eye.png")]
    public async Task PicturesAreWhatTheProgramDraws(string session, params string[] names)
    {
        string study = Path.Combine(demo.Folder, "study");
        string audit = $"{demo.Folder}-{session}";
        CommandRun run = await DemoRun.Run("screen", Path.Combine(study, session + ".edf"), "--setup", Path.Combine(study, "setup.toml"), "--out", audit);

        Assert.Equal(ExitCode.Done, run.Code);
        foreach (string name in names)
        {
            byte[] drawn = await File.ReadAllBytesAsync(Path.Combine(audit, "recordings", session, name));
            string kept = Path.GetFullPath(RepositoryRoot.Fixture("../docs/images/" + name));
            if (Golden.IsRewriteAsked)
            {
                Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
                await File.WriteAllBytesAsync(kept, drawn);
            }

            Assert.True(IsSame(kept, drawn), $"{name} in docs/images is out of date; set CHANNELAUDIT_GOLDEN=rewrite to draw it anew, then look at it.");
        }
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
