using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

/// <summary>What a setup says for comparing recordings over time.</summary>
public sealed class TrendSetupTests
{
    private const string Cheek = "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\nelectrodes = [\"C1\", \"C2\"]\n";

    [Fact]
    public void OtherElectrodesAndAnotherLabHoldForTheRecordingsThatAreMeant()
    {
        StudySetup setup = SetupFile.Parse(Cheek + "[[recordings]]\nmatch = \"south/*_c34_*\"\nlab = \"south\"\nelectrodes = { cheek = [\"C3\", \"C4\"] }\n", "setup.toml");

        Assert.Equal(["C3", "C4"], setup.For("south/1_c34_.edf").Sites[0].Electrodes.ToArray());
        Assert.Equal("south", setup.For("south/1_c34_.edf").Recording.Lab);
        Assert.Equal(["C1", "C2"], setup.For("north/1_c34_.edf").Sites[0].Electrodes.ToArray());
        Assert.Null(setup.For("north/1_c34_.edf").Recording.Lab);
    }

    [Theory]
    [InlineData("electrodes = { chek = [\"C3\", \"C4\"] }", "electrodes = \"chek\" is")]
    [InlineData("electrodes = { cheek = [\"C3\"] }", "electrodes")]
    [InlineData("electrodes = { cheek = [\"C3\", \"C3\"] }", "C3")]
    [InlineData("electrodes = { cheek = \"C3\" }", "electrodes")]
    public void ElectrodesThatCannotBeAreRefusedWithTheirLine(string line, string found)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => SetupFile.Parse($"{Cheek}[[recordings]]\nmatch = \"*\"\n{line}\n", "setup.toml"));

        Assert.Equal(FaultKind.Usage, fault.Kind);
        Assert.Contains(found, fault.Message, StringComparison.Ordinal);
        Assert.StartsWith("setup.toml, line ", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("20250312_P07.edf", "2025-03-12")]
    [InlineData("2025-03-12_P07.edf", "2025-03-12")]
    [InlineData("20251312_P07.edf", "2020-01-01")]
    [InlineData("other.edf", "2020-01-01")]
    [InlineData("20250312_late.edf", "2026-07-01")]
    public void TheDayIsThatOfTheRecordingElseOfThePathElseOfAll(string path, string day)
    {
        StudySetup setup = SetupFile.Parse(
            "[recording]\ndate = 2020-01-01\n[participants]\npath = \"{date}_*\"\n[[recordings]]\nmatch = \"*_late\"\ndate = 2026-07-01\n", "setup.toml");

        Assert.Equal(DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), setup.DayOf(path));
    }

    [Fact]
    public void WithoutAWordThereIsNoDayAndNobodyIsShown()
    {
        StudySetup setup = SetupFile.Parse(Cheek, "setup.toml");

        Assert.Null(setup.DayOf("20250312_P07.edf"));
        Assert.False(setup.ShowsPeople);
        Assert.True(SetupFile.Parse("[trend]\npeople = true\n", "setup.toml").ShowsPeople);
        Assert.Throws<ChannelAuditException>(() => SetupFile.Parse("[trend]\npeople = \"yes\"\n", "setup.toml"));
    }
}
