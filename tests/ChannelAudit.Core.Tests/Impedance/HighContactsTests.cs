using ChannelAudit.Impedance;
using Xunit;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>Which contact to make again: as few as it takes.</summary>
public sealed class HighContactsTests
{
    [Theory]
    [InlineData(30, 4, 3, "electrode a")]
    [InlineData(4, 30, 3, "electrode b")]
    [InlineData(30, 4, 11, "electrode a")]
    [InlineData(3, 4, 40, "the ground")]
    [InlineData(30, 31, 3, "electrode b, electrode a")]
    [InlineData(30, 4, 28, "electrode a, the ground")]
    [InlineData(4, 4, 4, "")]
    public void OnlyWhatIsHighIsNamed(double a, double b, double ground, string expected)
    {
        SiteImpedance site = Readings.Of(a + b, a + ground, b + ground).Sites[0];
        Assert.Equal(expected, string.Join(", ", HighContacts.Of(site).Select(contact => contact.Name)));
    }

    [Fact]
    public void IdsOfTheSetupAreUsed()
    {
        ImpedanceReport report = Readings.Report(Readings.Header + "cheek\ta-b\t34\t\t\ncheek\ta-ground\t33\t\t\ncheek\tb-ground\t7\t\t\n", Readings.Face);
        Assert.Equal(["electrode C-1"], HighContacts.Of(report.Sites[0]).Select(contact => contact.Name).ToArray());
        Assert.Equal("C-1 to ground", ImpedanceWords.Of(ImpedancePair.AToGround, report.Sites[0]));
    }
}
