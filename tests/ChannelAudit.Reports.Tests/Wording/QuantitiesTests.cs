using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Tests.Wording;

public sealed class QuantitiesTests
{
    // Hand-worked.
    [Theory]
    [InlineData(0, "0")]
    [InlineData(14.2449, "14.2")]
    [InlineData(-1234.5678, "-1235")]
    [InlineData(0.1849, "0.185")]
    [InlineData(0.00321, "0.00321")]
    [InlineData(5, "5")]
    [InlineData(99.96, "100")]
    [InlineData(120, "120")]
    public void NumbersHaveThreeDigits(double value, string expected) => Assert.Equal(expected, Quantities.Short(value));

    [Theory]
    [InlineData(0, "00:00")]
    [InlineData(65.5, "01:05")]
    [InlineData(59.99999999, "01:00")]
    [InlineData(3599.4, "59:59")]
    [InlineData(3725, "1:02:05")]
    [InlineData(-65, "-01:05")]
    public void TimesAreMinutesAndSeconds(double seconds, string expected) => Assert.Equal(expected, Quantities.Clock(seconds));

    [Theory]
    [InlineData(14.2449, "uV", "14.2 \u00B5V")]
    [InlineData(-1234.5, "uV/min", "-1234 \u00B5V/min")]
    [InlineData(0.5, "1", "0.5")]
    [InlineData(3, "%", "3 %")]
    [InlineData(999, "ms", "999 ms")]
    [InlineData(21001, "ms", "21 s")]
    public void UnitsAreThoseOfPeople(double value, string unit, string expected) => Assert.Equal(expected, Quantities.WithUnit(value, unit));

    [Fact]
    public void ACommaCultureChangesNothing() => Assert.Equal("-0.185", CommaCulture.Run(() => Quantities.Short(-0.1849)));

    [Theory]
    [InlineData(new int[0], "")]
    [InlineData(new[] { 4 }, "4")]
    [InlineData(new[] { 4, 5 }, "4, 5")]
    [InlineData(new[] { 1, 3, 4, 5, 9, 11, 12 }, "1, 3 to 5, 9, 11, 12")]
    public void RunsOfTrialsAreDrawnTogether(int[] trials, string expected) => Assert.Equal(expected, TrialList.Of(trials));
}
