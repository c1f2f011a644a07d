using System.Globalization;
using ChannelAudit.Reports.Tables;

namespace ChannelAudit.Reports.Tests.Tables;

public sealed class CellsTests
{
    // Hand-worked: nine significant digits, ties decided by the exact binary value.
    [Theory]
    [InlineData(0.0, "0")]
    [InlineData(1.0 / 3, "0.333333333")]
    [InlineData(-2.0 / 3, "-0.666666667")]
    [InlineData(123456789.4, "123456789")]
    [InlineData(1234567890.0, "1.23456789E+09")]
    [InlineData(0.00001234567891, "1.23456789E-05")]
    [InlineData(0.0001234567891, "0.000123456789")]
    [InlineData(14.0, "14")]
    [InlineData(-999999999.0, "-999999999")]
    [InlineData(999999999.5, "1E+09")]
    [InlineData(1e9, "1E+09")]
    [InlineData(-1e9, "-1E+09")]
    [InlineData(double.Epsilon, "4.94065646E-324")]
    public void NumbersHaveNineSignificantDigits(double value, string expected) => Assert.Equal(expected, Cells.Number(value));

    [Fact]
    public void MinusZeroIsZero() => Assert.Equal("0", Cells.Number(-0.0));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void NumbersThatAreNoneAreRefused(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => Cells.Number(value));

    [Fact]
    public void ACommaCultureChangesNoNumber() => Assert.Equal("-0.333333333", CommaCulture.Run(() => Cells.Number(-1.0 / 3)));

    // Nine digits are within half a unit of the ninth digit: 5e-9 relative at worst (hand-worked).
    [Fact]
    public void NumbersReadBackWithinHalfAUnitOfTheNinthDigit()
    {
        double value = 1e-12;
        for (int step = 0; step < 2000; step++)
        {
            double back = double.Parse(Cells.Number(value), CultureInfo.InvariantCulture);

            Assert.InRange(Math.Abs(back - value) / value, 0, 5.0000001e-9);
            value *= 1.0347;
        }
    }
}
