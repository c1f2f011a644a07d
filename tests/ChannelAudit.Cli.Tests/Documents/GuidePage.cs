using System.Text.RegularExpressions;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Documents;

/// <summary>A page of a guide, followed to the letter in bash: its commands run in one folder, and print what stands below them.</summary>
internal static partial class GuidePage
{
    /// <summary>Runs every block of commands.</summary>
    /// <param name="page">The page's text.</param>
    /// <param name="folder">Where they run; a block of settings becomes <c>setup.toml</c> there.</param>
    /// <returns>How many blocks of commands there were.</returns>
    public static int Follow(string page, TemporaryFolder folder)
    {
        string? output = null;
        int commands = 0;
        foreach (Match block in Block().Matches(page))
        {
            string text = block.Groups["text"].Value;
            switch (block.Groups["language"].Value)
            {
                case "toml":
                    folder.Write("setup.toml", text);
                    break;
                case "sh":
                    CommandRun run = Bash.Run("exec 2>&1\n" + text, folder.Folder);
                    Assert.True(run.Code == ExitCode.Done, $"{text}\n{run.Output}");
                    Assert.True(!run.Output.Contains("error:", StringComparison.Ordinal) || text.Contains("||", StringComparison.Ordinal), run.Output);
                    output = run.Output;
                    commands++;
                    break;

                // What stands above the first command is for the shell of the reader: building, and the path.
                default:
                    HasInOrder(output, text);
                    break;
            }
        }

        return commands;
    }

    private static void HasInOrder(string? output, string shown)
    {
        int from = 0;
        foreach (string part in shown.Split("...\n", StringSplitOptions.RemoveEmptyEntries).Where(_ => output is not null))
        {
            int at = output!.IndexOf(part, from, StringComparison.Ordinal);
            Assert.True(at >= 0, $"not printed:\n{part}\nbut:\n{output}");
            from = at + part.Length;
        }
    }

    [GeneratedRegex(
        "^```(?<language>sh|toml|text)\n(?<text>.*?)^```$",
        RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Block();
}
