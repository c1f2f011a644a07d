using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary>Shows a command's help in the same width on every terminal: first what it is for, at the end examples.</summary>
internal sealed class HelpWithExample : SynchronousCommandLineAction
{
    private const int Width = 100;
    private const string Usage = "Usage:";

    private readonly Dictionary<Command, HelpText> _texts = [];

    /// <summary>Adds what the help of a command says. Every command needs it; a test goes through them.</summary>
    /// <param name="command">The command.</param>
    /// <param name="text">What it is for, notes and examples.</param>
    public void Add(Command command, HelpText text) => _texts.Add(command, text);

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

        // The library's own text from the usage on: the description before it is only a line, and stands above the purpose.
        string help = string.Join('\n', text.ToString().TrimEnd().Split('\n').Select(line => line.TrimEnd()));
        int usage = help.IndexOf(Usage, StringComparison.Ordinal);
        Command command = parseResult.CommandResult.Command;
        output.Write(Whole(command.Description ?? string.Empty, help[Math.Max(usage, 0)..], _texts.GetValueOrDefault(command)));
        return ExitCode.Done;
    }

    private static string Whole(string description, string words, HelpText? text)
    {
        StringBuilder whole = new();
        string[] parts = [description, text?.Purpose ?? string.Empty, words, text?.Notes ?? string.Empty];
        foreach (string part in parts.Where(part => part.Length > 0))
        {
            whole.Append(part.TrimEnd('\n')).Append("\n\n");
        }

        whole.Append("Examples:\n");
        foreach (HelpExample example in text?.Examples ?? [])
        {
            whole.Append("  ").Append(example.Line).Append("\n      ").Append(example.What).Append('\n');
        }

        return whole.ToString();
    }
}
