using ChannelAudit.Runs;
using CsCheck;
using Xunit;

namespace ChannelAudit.Core.Tests.Runs;

public sealed class RecordingIdTests
{
    // Escapes are those of RFC 3986, section 2.1: blank %20, plus %2B, percent %25; the micro sign is C2 B5 in UTF-8.
    [Theory]
    [InlineData("P07.edf", "P07")]
    [InlineData("day 1/P07.edf", "day%201+P07")]
    [InlineData("sub-01/emg/sub-01_task-x_emg.bdf", "sub-01+emg+sub-01_task-x_emg")]
    [InlineData("a+b.csv", "a%2Bb")]
    [InlineData("50%.csv", "50%25")]
    [InlineData("v1.2.edf", "v1.2")]
    [InlineData("noextension", "noextension")]
    [InlineData(".edf", "%2Eedf")]
    [InlineData("...edf", "%2E%2E")]
    [InlineData("../x.edf", "%2E%2E+x")]
    [InlineData("a..edf", "a%2E")]
    [InlineData("Zoë 頬.edf", "Zoë%20頬")]
    [InlineData("a:b\\c|d.edf", "a%3Ab%5Cc%7Cd")]
    [InlineData("$(rm)<i>.edf", "%24%28rm%29%3Ci%3E")]
    [InlineData("=1\t.edf", "%3D1%09")]
    public void IdsArePathsMadeSafe(string path, string expected) => Assert.Equal(expected, RecordingId.Of(path));

    [Fact]
    public void DifferentPathsHaveDifferentIds()
    {
        Gen<string> part = Gen.String[Gen.Char[" +%._-aA0/é"], 1, 6].Select(text => $"x{text.Replace("//", "/", StringComparison.Ordinal)}x.edf");

        Gen.Select(part, part).Sample((a, b) =>
            string.Equals(a, b, StringComparison.Ordinal) || !string.Equals(RecordingId.Of(a), RecordingId.Of(b), StringComparison.Ordinal));
    }

    [Fact]
    public void NoIdLeavesItsFolder() => Gen.String[1, 12].Where(text => text.All(char.IsAscii)).Sample(text =>
    {
        string id = RecordingId.Of(text + ".edf");
        return id.Length > 0 && id[0] != '.' && id.IndexOfAny(['/', '\\', ':', '\0', '\n', '\t']) < 0;
    });
}
