using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

/// <summary>Every text about a setup that cannot be.</summary>
public sealed class SetupFaultTests
{
    [Theory]
    [InlineData("[recording]\nmains = 50\n", "line 2: unknown key 'mains' in [recording]", "did you mean 'mains_hz'?")]
    [InlineData(
        "[recording]\ncolour = 1\n", "line 2: unknown key 'colour' in [recording]",
        "keys of [recording]: mains_hz, sampling_hz, unit, amplifier_noise_uv, lab, amplifier, technician, date")]
    [InlineData("\n[recordin]\n", "line 2: unknown key 'recordin' in the setup", "did you mean 'recording'?")]
    [InlineData("[zebra]\n", "line 1: unknown key 'zebra' in the setup", "keys of the setup: recording, sites, trials, recordings, participants, scoring, protocol, trend")]
    [InlineData("[[site]]\nname = \"a\"\n", "line 1: unknown key 'site' in the setup", "did you mean 'sites'?")]
    [InlineData("[trials]\nwindows = [0, 1]\n", "line 2: unknown key 'windows' in [trials]", "did you mean 'window'?")]
    [InlineData("[scoring]\nhighpas_hz = 20\n", "line 2: unknown key 'highpas_hz' in [scoring]", "did you mean 'highpass_hz'?")]
    public void UnknownNamesAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    [Theory]
    [InlineData("mains_hz = 50\n", "line 1: 'mains_hz' stands outside of its table", "put it below a line [recording]")]
    [InlineData("minimum = 8\n", "line 1: 'minimum' stands outside of its table", "put it below a line [trials]")]
    [InlineData("channel = \"a\"\n", "line 1: 'channel' stands outside of its table", "put it below a line [[sites]]")]
    [InlineData("highpass_hz = 20\n", "line 1: 'highpass_hz' stands outside of its table", "put it below a line [scoring]")]
    public void KeysStandInTheirTables(string toml, string found, string hint) => IsRefused(toml, found, hint);

    [Theory]
    [InlineData("recording = 5\n", "line 1: recording must be a table, not a number", "for example [recording]")]
    [InlineData("[sites]\nname = \"a\"\n", "line 1: sites must be a list of tables", "write [[sites]] in double brackets above each site")]
    [InlineData("sites = [1]\n", "line 1: sites must be a list of tables", "write [[sites]] in double brackets above each site")]
    [InlineData("[recording]\nmains_hz = \"50\"\n", "line 2: mains_hz must be a number, not text", "for example mains_hz = 50.0")]
    [InlineData("[recording]\nmains_hz = true\n", "line 2: mains_hz must be a number, not true or false", "for example mains_hz = 50.0")]
    [InlineData("[recording]\namplifier = 7\n", "line 2: amplifier must be text in quotes, not a number", "for example amplifier = \"A\"")]
    [InlineData("[recording]\nunit = [\"uV\"]\n", "line 2: unit must be text in quotes, not a list", "for example unit = \"uV\"")]
    [InlineData("[recording]\ndate = \"2026-03-12\"\n", "line 2: date must be a date, not text", "for example date = 2026-03-12")]
    [InlineData("[recording]\ndate = 2026-03-12T10:00:00\n", "line 2: date must be a date, not a time", "for example date = 2026-03-12")]
    [InlineData("[trials]\nrest = \"rest\"\n", "line 2: rest must be a list of texts, not text", "for example rest = [\"rest\"]")]
    [InlineData("[trials]\nrest = [\"a\",\n1]\n", "line 3: rest must be text in quotes, not a number", "for example rest = [\"rest\"]")]
    [InlineData("[trials]\nwindow = 3\n", "line 2: window must be a list of numbers, not a number", "for example window = [0.0, 3.0]")]
    [InlineData("[trials]\nwindow = [0, {}]\n", "line 2: window must be a number, not a table", "for example window = [0.0, 3.0]")]
    [InlineData("[trials]\nminimum = 8.5\n", "line 2: minimum must be a whole number, not a number", "for example minimum = 8")]
    public void WrongKindsAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    [Theory]
    [InlineData("[recording]\nmains_hz = 500\n", "line 2: mains_hz = 500 is out of range", "mains_hz goes from 40 to 70")]
    [InlineData("[recording]\nmains_hz = -50.0\n", "line 2: mains_hz = -50.0 is out of range", "mains_hz goes from 40 to 70")]
    [InlineData("[recording]\nmains_hz = nan\n", "line 2: mains_hz = nan is out of range", "mains_hz goes from 40 to 70")]
    [InlineData("[recording]\nsampling_hz = 0\n", "line 2: sampling_hz = 0 is out of range", "sampling_hz goes from 1 to 1000000")]
    [InlineData("[recording]\nsampling_hz = inf\n", "line 2: sampling_hz = inf is out of range", "sampling_hz goes from 1 to 1000000")]
    [InlineData("[recording]\nsampling_hz = 1e400\n", "line 2: sampling_hz = 1e400 is out of range", "sampling_hz goes from 1 to 1000000")]
    [InlineData(
        "[recording]\namplifier_noise_uv = -0.7\n", "line 2: amplifier_noise_uv = -0.7 is out of range", "amplifier_noise_uv goes from 0.001 to 100")]
    [InlineData("[trials]\nbaseline_s = -1\n", "line 2: baseline_s = -1 is out of range", "baseline_s goes from 0.001 to 86400")]
    [InlineData("[trials]\nminimum = 0\n", "line 2: minimum = 0 is out of range", "minimum goes from 1 to 1000000")]
    [InlineData("[trials]\nwindow = [-0.5, 1]\n", "line 2: window = -0.5 is out of range", "window goes from 0 to 86400")]
    [InlineData("[scoring]\nhighpass_hz = -20\n", "line 2: highpass_hz = -20 is out of range", "highpass_hz goes from 0.01 to 400")]
    public void NumbersOutOfRangeAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    [Theory]
    [InlineData("[recording]\nunit = \"uVolt\"\n", "line 2: unit = \"uVolt\" is not known", "unit is one of: uV, mV, V, none")]
    [InlineData("[trials]\nfrom = \"anotations\"\n", "line 2: from = \"anotations\" is not known", "did you mean 'annotations'?")]
    [InlineData("[trials]\nfrom = \"x\"\n", "line 2: from = \"x\" is not known", "from is one of: annotations, events, trigger, blocks")]
    [InlineData("[trials]\nwindow = [3.0, 3.0]\n", "line 2: window = [3.0, 3.0] does not end after it starts", "write window = [from, to] in s after onset")]
    [InlineData("[trials]\nwindow = [3.0]\n", "line 2: window needs two numbers, 1 given", "write window = [from, to] in s after onset")]
    [InlineData("[recording]\ntechnician = \"  \"\n", "line 2: technician is blank", "for example technician = \"T3\", or leave it out")]
    [InlineData(
        "[recording]\ntechnician = \"T\\t3\"\n", "line 2: technician has a control character in it", "write it in one line, without tabs")]
    public void WrongValuesAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    [Theory]
    [InlineData("[[sites]]\nchannel = \"A\"\n", "line 1: this site has no name", "add name = \"cheek\"")]
    [InlineData("\n[[sites]]\nname = \"a\"\n", "line 2: this site has no channel", "add channel = \"LABEL IN THE RECORDING\"")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\n[[sites]]\nname = \"A\"\nchannel = \"B\"\n",
        "line 5: a site 'A' is there already, from line 1", "give each site a name of its own")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\n[[sites]]\nname = \"b\"\nchannel = \"A\"\n",
        "line 6: channel 'A' belongs to a site already, in line 3", "each site has a channel of its own; see the labels in the recording")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\nelectrodes = [\"1\"]\n",
        "line 4: electrodes needs two ids, 1 given", "write electrodes = [\"C1\", \"C2\"], first minus second")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\nelectrodes = []\n",
        "line 4: electrodes needs two ids, 0 given", "write electrodes = [\"C1\", \"C2\"], first minus second")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\nelectrodes = [\"1\", \"1\"]\n",
        "line 4: electrode '1' is named twice", "the two electrodes of a site have two ids")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\nposition = [0, 0.5, 1]\n", "line 4: position needs two numbers, 3 given", "write position = [x, y]")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\nposition = [0.5, 1.2]\n", "line 4: position = 1.2 is out of range", "position goes from 0 to 1")]
    [InlineData(
        "[[sites]]\nname = \"a\"\nchannel = \"A\"\nside = \"lefft\"\n", "line 4: side = \"lefft\" is not known", "did you mean 'left'?")]
    [InlineData(
        "[[sites]]\nname = \"cheek\"\nchannel = \"A\"\nadjacent = [\"cheek\"]\n",
        "line 4: site 'cheek' is adjacent to itself", "name the other sites that are near")]
    [InlineData(
        "[[sites]]\nname = \"cheek\"\nchannel = \"A\"\nadjacent = [\"brows\"]\n[[sites]]\nname = \"brow\"\nchannel = \"B\"\n",
        "line 4: adjacent names 'brows', which is no site", "did you mean 'brow'?")]
    [InlineData("[[sites]]\nname = \"Ground\"\nchannel = \"A\"\n", "line 2: a site is called 'ground'", "'ground' stands for the ground electrode in adjacent: give the site another name")]
    [InlineData("[[sites]]\nname = \"a\"\nlabel = \"A\"\n", "line 3: unknown key 'label' in [[sites]]", "keys of [[sites]]: name, muscle, channel, side, position, electrodes, adjacent, task")]
    public void WrongSitesAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    private static void IsRefused(string toml, string found, string hint) =>
        Faults.AreExactly($"setup.toml, {found}", hint, () => SetupFile.Parse(toml, "setup.toml"));
}
