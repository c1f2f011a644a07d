using Xunit;

namespace ChannelAudit.Core.Tests.Documents;

/// <summary>The README's two commands, which CI takes out of it and runs.</summary>
public sealed class ReadmeTests
{
    [Fact]
    public void ItHasTwoCommandsTheDemoAndTheTests() => Assert.Equal(
        ["dotnet run -c Release --project src/ChannelAudit.Cli -- demo my-demo", "dotnet test -c Release"],
        ShellBlocks(Pages.Text("README.md")));

    private static List<string> ShellBlocks(string text)
    {
        List<string> blocks = [];
        string[] parts = text.Split("```sh\n");
        foreach (string part in parts.Skip(1))
        {
            blocks.Add(part[..part.IndexOf("```", StringComparison.Ordinal)].Trim());
        }

        return blocks;
    }
}
