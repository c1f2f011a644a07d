using System.CommandLine;
using System.CommandLine.Invocation;

namespace ChannelAudit.Cli.Commands;

/// <summary>Prints the program's name and version.</summary>
internal sealed class ShowVersion : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        parseResult.InvocationConfiguration.Output.Write($"channelaudit {ProductVersion.Text}\n");
        return ExitCode.Done;
    }
}
