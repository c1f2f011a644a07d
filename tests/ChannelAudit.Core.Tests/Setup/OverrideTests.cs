using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

/// <summary>What is different for some recordings, and whose they are.</summary>
public sealed class OverrideTests
{
    private const string Sites = """
        [recording]
        mains_hz = 50.0
        amplifier = "A"
        [[sites]]
        name = "cheek"
        channel = "EMG 1"
        [[sites]]
        name = "brow"
        channel = "EMG 2"

        """;

    [Fact]
    public void LaterTablesWinAndWhatTheyDoNotSayStays()
    {
        StudySetup setup = Parse("""
            [[recordings]]
            match = ["day2/*", "P09"]
            amplifier = "B"
            group = "second"
            [[recordings]]
            match = "day2/P07"
            channels = { cheek = "EMG 2", brow = "EMG 1" }
            participant = "X7"
            amplifier_noise_uv = 0.5
            """);

        StudySetup own = setup.For("day2/P07.edf");

        Assert.Equal(("B", 50.0, 0.5), (own.Recording.Amplifier, own.Recording.MainsHz, own.Recording.AmplifierNoiseUv));
        Assert.Equal(["EMG 2", "EMG 1"], own.Sites.Select(site => site.Channel), StringComparer.Ordinal);
        Assert.Equal(new Person("X7", "second"), Person.Of(setup, "day2/P07.edf", _ => null));
        Assert.Equal("A", setup.For("day1/P07.edf").Recording.Amplifier);
        Assert.Equal("EMG 1", setup.For("P09.edf").Sites[0].Channel);
    }

    [Theory]
    [InlineData("", "sub-01/emg/sub-01_task-x_emg.edf", "sub-01", "patients")]
    [InlineData("", "P07_day1.edf", null, null)]
    [InlineData("[participants]\npath = \"{group}/{participant}_*\"\n", "control/P07_day1.edf", "P07", "control")]
    [InlineData("[participants]\npath = \"{participant}_*\"\n", "P07_day1.edf", "P07", "patients")]
    public void ThePathOrTheDataSetSaysWhoItIs(string table, string path, string? participant, string? group) =>
        Assert.Equal(new Person(participant, group), Person.Of(SetupFile.Parse(table, "setup.toml"), path, _ => "patients"));

    [Theory]
    [InlineData("[[recordings]]\ngroup = \"x\"\n", "[[recordings]] does not say which")]
    [InlineData("[[recordings]]\nmatch = \"{participant}\"\n", "{participant} means nothing in match, or stands there twice")]
    [InlineData("[[recordings]]\nmatch = \"*\"\nchannels = { chek = \"EMG 3\" }\n", "channels = \"chek\" is")]
    [InlineData("[[recordings]]\nmatch = \"*\"\nchannels = { cheek = \"EMG 2\" }\n", "two sites would be channel 'EMG 2'")]
    [InlineData("[[recordings]]\nmatch = \"*\"\nmains = 50\n", "unknown key 'mains'")]
    [InlineData("recordings = 3\n", "recordings is not a list of tables")]
    [InlineData("[participants]\npath = \"P*\"\n", "path has no {participant} and no {group}")]
    [InlineData("[participants]\npath = \"{who}\"\n", "{who} means nothing in path, or stands there twice")]
    public void WhatCannotBeMeantIsRefusedWithItsLine(string table, string found)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Parse(table));

        Assert.Contains(found, fault.Message, StringComparison.Ordinal);
        Assert.Matches("^setup.toml, line [0-9]+: ", fault.Message);
        Assert.NotEmpty(fault.Hint);
    }

    private static StudySetup Parse(string tables) => SetupFile.Parse(tables.StartsWith("recordings", StringComparison.Ordinal) ? tables + Sites : Sites + tables, "setup.toml");
}
