using System.Globalization;
using System.Text;
using ChannelAudit.TestKit;

namespace ChannelAudit.Reports.Tests;

/// <summary>Compares text with a file that a person has looked at; rewrites it only when CHANNELAUDIT_GOLDEN is "rewrite", never in CI.</summary>
internal static class Golden
{
    public static void Match(string name, string actual)
    {
        string path = RepositoryRoot.Fixture($"../tests/ChannelAudit.Reports.Tests/Golden/{name}");
        bool isCi = Environment.GetEnvironmentVariable("CI") is { Length: > 0 };
        if (!isCi && string.Equals(Environment.GetEnvironmentVariable("CHANNELAUDIT_GOLDEN"), "rewrite", StringComparison.Ordinal))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        }

        string[] expected = File.ReadAllText(path).Split('\n');
        string[] found = actual.Split('\n');
        for (int line = 0; line < Math.Max(expected.Length, found.Length); line++)
        {
            string left = line < expected.Length ? expected[line] : "(end)";
            string right = line < found.Length ? found[line] : "(end)";
            Assert.True(
                string.Equals(left, right, StringComparison.Ordinal),
                string.Create(CultureInfo.InvariantCulture, $"{name}, line {line + 1}\nexpected: {left}\nfound:    {right}"));
        }
    }
}
