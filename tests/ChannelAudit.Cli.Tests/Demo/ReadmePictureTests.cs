using Xunit;

namespace ChannelAudit.Cli.Tests.Demo;

/// <summary>The pictures in the project's README and guides are those that the demo's sessions give.</summary>
public sealed class ReadmePictureTests(DemoRun demo) : IClassFixture<DemoRun>
{
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
            KeptPicture.Match("docs/images/" + name, drawn);
        }
    }

    [Fact]
    public async Task ThePictureOfAPilotIsWhatTheProgramDraws()
    {
        string study = Path.Combine(demo.Folder, "study");
        string pilot = demo.Folder + "-pilot";
        CommandRun run = await DemoRun.Run(
            "pilot", Path.Combine(study, "K11.edf"), "--setup", Path.Combine(study, "setup.toml"), "--impedance", Path.Combine(demo.Folder, "impedance", "K11.tsv"), "--out", pilot);

        Assert.Equal(ExitCode.Done, run.Code);
        KeptPicture.Match("docs/images/pilot.png", await File.ReadAllBytesAsync(Path.Combine(pilot, "pilot.png")));
    }
}
