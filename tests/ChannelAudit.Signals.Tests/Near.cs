using System.Globalization;

namespace ChannelAudit.Signals.Tests;

/// <summary>Comparison of numbers with a tolerance.</summary>
internal static class Near
{
    /// <summary>Asserts |found − wanted| at most tolerance·|wanted|, plus a thousandth of that for the largest wanted
    /// value, which is for entries that are next to nothing.</summary>
    public static void All(ReadOnlySpan<double> wanted, ReadOnlySpan<double> found, double tolerance)
    {
        Assert.Equal(wanted.Length, found.Length);
        var largest = 0.0;
        foreach (var value in wanted)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        for (var i = 0; i < wanted.Length; i++)
        {
            Within(tolerance * (Math.Abs(wanted[i]) + (1E-3 * largest)), wanted[i], found[i]);
        }
    }

    /// <summary>Asserts |found − wanted| at most tolerance·|wanted|.</summary>
    public static void One(double wanted, double found, double tolerance) =>
        Within(tolerance * Math.Abs(wanted), wanted, found);

    /// <summary>Asserts |found − wanted| at most an amount.</summary>
    public static void Within(double amount, double wanted, double found) =>
        Assert.True(
            Math.Abs(found - wanted) <= amount,
            string.Create(CultureInfo.InvariantCulture, $"wanted {wanted:R}, found {found:R}, allowed {amount:G3}"));
}
