using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace ChannelAudit.Cli.Commands;

/// <summary>Shows a command's help with an example at its end, in the same width on every terminal.</summary>
internal sealed class HelpWithExample : SynchronousCommandLineAction
{
    private const int Width = 100;

    private readonly Dictionary<Command, string> _examples = [];

    /// <summary>Adds what stands below the options of a command.</summary>
    /// <param name="command">The command.</param>
    /// <param name="text">Whole lines.</param>
    public void Add(Command command, string text) => _examples.Add(command, text);

    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        TextWriter output = parseResult.InvocationConfiguration.Output;
        using var text = new StringWriter { NewLine = "\n" };
        parseResult.InvocationConfiguration.Output = text;
        new HelpAction { MaxWidth = Width }.Invoke(parseResult);
        parseResult.InvocationConfiguration.Output = output;

        string example = _examples.GetValueOrDefault(parseResult.CommandResult.Command, string.Empty);
        string help = string.Join('\n', text.ToString().TrimEnd().Split('\n').Select(line => line.TrimEnd()));
        output.Write($"{help}\n\n{example}");
        return ExitCode.Done;
    }
}
