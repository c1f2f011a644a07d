using System.CommandLine;
using ChannelAudit.Cli.Commands;

namespace ChannelAudit.Cli.Tests;

/// <summary>All commands there are, so that a later one is tested like the others.</summary>
internal static class CommandTree
{
    /// <summary>The words behind the program's name that lead to each command; the root has none.</summary>
    public static string[][] Paths()
    {
        using var context = new CommandContext(TextWriter.Null, TextWriter.Null, new RecordedEngine());
        return [.. PathsBelow(RootCommandFactory.Create(context), [])];
    }

    private static IEnumerable<string[]> PathsBelow(Command command, string[] path) => command.Subcommands
        .SelectMany(subcommand => PathsBelow(subcommand, [.. path, subcommand.Name]))
        .Prepend(path);
}
