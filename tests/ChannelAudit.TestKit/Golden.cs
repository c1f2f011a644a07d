using System.Globalization;
using Xunit;

namespace ChannelAudit.TestKit;

/// <summary>Compares a text with one that is kept in the repository.</summary>
public static class Golden
{
    /// <summary>Whether what is kept is to be written anew.</summary>
    public static bool IsRewriteAsked =>
        string.Equals(Environment.GetEnvironmentVariable("CHANNELAUDIT_GOLDEN"), "rewrite", StringComparison.Ordinal)
        && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI"));

    /// <summary>Fails with the first line that differs; writes the file instead when the environment asks for it, but never in CI.</summary>
    /// <param name="file">Path below <c>tests/</c>, with forward slashes.</param>
    /// <param name="actual">The text; carriage returns count.</param>
    public static void Match(string file, string actual)
    {
        string path = Path.GetFullPath(RepositoryRoot.Fixture("../tests/" + file));
        if (IsRewriteAsked)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
            return;
        }

        Assert.True(File.Exists(path), $"{file} is missing; set CHANNELAUDIT_GOLDEN=rewrite to write it, then read it.");
        string[] expectedLines = File.ReadAllText(path).Split('\n');
        string[] actualLines = actual.Split('\n');
        for (int index = 0; index < Math.Max(expectedLines.Length, actualLines.Length); index++)
        {
            string expected = expectedLines.ElementAtOrDefault(index) ?? "(end of text)";
            string found = actualLines.ElementAtOrDefault(index) ?? "(end of text)";
            Assert.True(
                string.Equals(expected, found, StringComparison.Ordinal),
                string.Create(CultureInfo.InvariantCulture, $"{file}, line {index + 1}:\nexpected: {expected}\nfound:    {found}"));
        }
    }
}
