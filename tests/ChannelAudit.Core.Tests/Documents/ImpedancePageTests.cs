using System.Globalization;
using System.Text.RegularExpressions;
using ChannelAudit.Impedance;
using Xunit;

namespace ChannelAudit.Core.Tests.Documents;

/// <summary><c>docs/impedance.md</c> against the code.</summary>
public sealed class ImpedancePageTests
{
    private static readonly string Page = Regex.Replace(Pages.Text("docs/impedance.md"), "\\s+", " ", RegexOptions.None, TimeSpan.FromSeconds(5));

    [Fact]
    public void ItListsEveryWarningInTheOrderOfUrgency() => Assert.Equal(
        Enum.GetValues<ImpedanceWarningCode>().Select(ImpedanceCodes.Of),
        Enum.GetValues<ImpedanceWarningCode>().Select(ImpedanceCodes.Of).OrderBy(code => Page.IndexOf($"| `{code}` |", StringComparison.Ordinal)),
        StringComparer.Ordinal);

    [Fact]
    public void ItListsEveryGrade() => Assert.All(
        Enum.GetValues<ImpedanceGrade>(), grade => Assert.Contains($" `{ImpedanceCodes.Of(grade)}` |", Page, StringComparison.Ordinal));

    public static TheoryData<string, double[]> Limits { get; } = new()
    {
        { "below {0} kΩ |", [ImpedanceLimits.GoodBelowKohm] },
        { "{0} to {1} kΩ, both limits included", [ImpedanceLimits.GoodBelowKohm, ImpedanceLimits.RedoAboveKohm] },
        { "| above {0} kΩ", [ImpedanceLimits.RedoAboveKohm] },
        { "measure again {0} minutes after", [ImpedanceLimits.WaitMinutes] },
        { "after {0} minutes in the same phase", [ImpedanceLimits.LongestWaitMinutes] },
        { "at most {0} minutes apart", [ImpedanceLimits.TogetherMinutes] },
        { "when phases differ: {0} % are allowed", [100 * ImpedanceLimits.Tolerance] },
        { "no reading of the table below {0} kΩ", [ImpedanceLimits.DoubtfulUnitKohm] },
        { "`a-b` {0} kΩ or less, both others more than {1} times that", [ImpedanceLimits.TooLowKohm, ImpedanceLimits.JointRatio] },
        { "all three {0} kΩ or less", [ImpedanceLimits.TooLowKohm] },
        { "more than {0} % above least, and more than {1} kΩ", [100 * ImpedanceLimits.GroundSpread, ImpedanceLimits.SmallGroundDifferenceKohm] },
        { "more than {0} times the sum of the two others, and more than {1} kΩ above it", [1 + ImpedanceLimits.Tolerance, ImpedanceLimits.SmallDifferenceKohm] },
        { "more than {0} kΩ apart, or more than {1} times and more than {2} kΩ apart", [ImpedanceLimits.ImbalanceKohm, ImpedanceLimits.ImbalanceRatio, ImpedanceLimits.SmallDifferenceKohm] },
        { "{0} kΩ and more (**Ω taken for kΩ**", [ImpedanceLimits.ImplausibleKohm] },
    };

    [Theory]
    [MemberData(nameof(Limits))]
    public void ItsLimitsAreThoseOfTheCode(string words, double[] limits) => Assert.Contains(
        string.Format(CultureInfo.InvariantCulture, words, [.. limits.Cast<object>()]), Page, StringComparison.Ordinal);
}
