using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

public sealed class SetupCheckTests
{
    private static readonly string[] Labels = ["EMG cheek", "EMG brow", "Status"];

    [Fact]
    public void SitesFindTheirChannels()
    {
        StudySetup setup = With(("brow", "EMG brow"), ("cheek", "EMG cheek"));

        SetupCheck.Against(setup, Labels, "P07.edf");

        Assert.Equal("1, 0", Positions(setup, Labels));
    }

    [Fact]
    public void ASetupWithoutSitesFitsEverything() => SetupCheck.Against(StudySetup.Empty, [], "P07.edf");

    [Fact]
    public void AChannelThatIsNotThereIsRefusedWithTheNearestLabel() => Faults.AreExactly(
        "setup.toml, site 'cheek': channel 'EMG chek' is not in P07.edf",
        "did you mean 'EMG cheek'? labels there: EMG cheek, EMG brow, Status",
        () => SetupCheck.Against(With(("cheek", "EMG chek")), Labels, "P07.edf"));

    [Fact]
    public void WithoutANearLabelAllAreListed() => Faults.AreExactly(
        "setup.toml, site 'cheek': channel 'Ch 11' is not in P07.edf",
        "labels there: EMG cheek, EMG brow, Status",
        () => SetupCheck.Against(With(("cheek", "Ch 11")), Labels, "P07.edf"));

    [Fact]
    public void ARepeatedLabelIsRefused() => Faults.AreExactly(
        "setup.toml, site 'cheek': 2 channels in P07.edf are labelled 'EMG'",
        "say which by its position: channel = \"EMG#1\" for the first, \"EMG#2\" for the second",
        () => SetupCheck.Against(With(("cheek", "EMG")), ["EMG", "ECG", "EMG"], "P07.edf"));

    [Fact]
    public void RepeatedLabelsAreToldApartByPosition() =>
        Assert.Equal("2, 0", Positions(With(("brow", "EMG#2"), ("cheek", "EMG#1")), ["EMG", "ECG", "EMG"]));

    [Theory]
    [InlineData("EMG#3")]
    [InlineData("EMG#0")]
    [InlineData("EMG# 1")]
    public void APositionThatIsNotThereIsRefused(string channel) => Faults.AreExactly(
        $"setup.toml, site 'cheek': channel '{channel}' is not in P07.edf",
        "did you mean 'EMG#1'? labels there: EMG#1, ECG, EMG#2",
        () => SetupCheck.Against(With(("cheek", channel)), ["EMG", "ECG", "EMG"], "P07.edf"));

    [Fact]
    public void ALabelThatReallyHasANumberSignIsItself() =>
        Assert.Equal("1", Positions(With(("cheek", "EMG#2")), ["EMG", "EMG#2"]));

    [Fact]
    public void OneChannelServesOneSite() => Faults.AreExactly(
        "setup.toml, site 'b': channel 'EMG#2' in P07.edf belongs to site 'a' already",
        "each site has a channel of its own; see the labels in the recording",
        () => SetupCheck.Against(
            With(("a", "EMG#2"), ("b", "EMG#2")), ["EMG", "EMG"], "P07.edf"));

    [Fact]
    public void ASiteIsNotNamedLikeAnotherChannel() => Faults.AreExactly(
        "setup.toml, site 'EMG brow': another channel in P07.edf is labelled 'EMG brow'",
        "give the site another name, or that channel a site of its own",
        () => SetupCheck.Against(With(("EMG brow", "EMG cheek")), Labels, "P07.edf"));

    [Fact]
    public void TwoSitesMaySwapTheLabelsOfTheirChannels() =>
        SetupCheck.Against(With(("EMG brow", "EMG cheek"), ("EMG cheek", "EMG brow")), Labels, "P07.edf");

    private static string Positions(StudySetup setup, string[] labels) => string.Join(", ", SiteChannels.Locate(setup, labels, "P07.edf"));

    private static StudySetup With(params (string Name, string Channel)[] sites) => new()
    {
        FileName = "setup.toml",
        Sites = [.. sites.Select(site => new SiteSetup { Name = site.Name, Channel = site.Channel })],
    };
}
