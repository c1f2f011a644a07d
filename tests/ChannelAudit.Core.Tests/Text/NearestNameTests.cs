using ChannelAudit.Text;
using CsCheck;
using Xunit;

namespace ChannelAudit.Core.Tests.Text;

public sealed class NearestNameTests
{
    // kitten/sitting and Saturday/Sunday: the worked examples of the public encyclopaedia page "Levenshtein distance" (from memory);
    // ca/abc = 3 is the usual example in which optimal string alignment differs from the unrestricted distance (2).
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("Saturday", "Sunday", 3)]
    [InlineData("ca", "abc", 3)]
    [InlineData("mains", "manis", 1)]
    [InlineData("", "abc", 3)]
    [InlineData("same", "same", 0)]
    public void DistanceAgreesWithWorkedExamples(string a, string b, int expected) => Assert.Equal(expected, NearestName.Distance(a, b));

    [Fact]
    public void DistanceIsSymmetricAndBoundedByTheLongerText() =>
        Gen.Select(Gen.String[Gen.Char['a', 'd'], 0, 8], Gen.String[Gen.Char['a', 'd'], 0, 8]).Sample((a, b) =>
        {
            int distance = NearestName.Distance(a, b);
            return distance == NearestName.Distance(b, a)
                && distance <= Math.Max(a.Length, b.Length)
                && distance >= Math.Abs(a.Length - b.Length)
                && distance == 0 == string.Equals(a, b, StringComparison.Ordinal);
        });

    [Theory]
    [InlineData("mains", "mains_hz")]
    [InlineData("main_hz", "mains_hz")]
    [InlineData("Mains-Hz", "mains_hz")]
    [InlineData("samplng_hz", "sampling_hz")]
    [InlineData("sampling_hz_", "sampling_hz")]
    public void AMistypedNameFindsItsOwn(string given, string expected) =>
        Assert.Equal(expected, NearestName.Of(given, ["unit", "sampling_hz", "mains_hz"]));

    [Theory]
    [InlineData("colour")]
    [InlineData("")]
    [InlineData("ab")]
    public void AStrangeNameFindsNothing(string given) => Assert.Null(NearestName.Of(given, ["unit", "sampling_hz", "mains_hz"]));
}
