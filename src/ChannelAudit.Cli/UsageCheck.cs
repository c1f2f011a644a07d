using System.CommandLine;
using System.CommandLine.Parsing;

namespace ChannelAudit.Cli;

/// <summary>Refuses command lines that were not understood, with words of our own.</summary>
/// <remarks>The parser takes an unknown option for one more argument or for an option's value: both are found here.</remarks>
internal static class UsageCheck
{
    /// <summary>Throws for the first thing that is wrong.</summary>
    /// <param name="parse">What the parser made of the words.</param>
    /// <param name="words">The words themselves.</param>
    /// <exception cref="ChannelAuditException">When anything is wrong.</exception>
    public static void Refuse(ParseResult parse, IReadOnlyList<string> words)
    {
        CommandResult result = parse.CommandResult;
        string path = PathOf(result);
        Option[] options = [.. OptionsOf(result)];
        string[] names = [.. options.SelectMany(option => option.Aliases.Prepend(option.Name))];
        RefuseNeedlessValues(words, path, options);
        RefuseSwallowedOptions(result, path, names);
        RefuseUnknownOptions(parse, path, names);
        if (parse.UnmatchedTokens.Count > 0)
        {
            string[] commands = [.. result.Command.Subcommands.Select(command => command.Name)];
            throw commands.Length > 0
                ? UsageErrors.UnknownCommand(path, parse.UnmatchedTokens[0], [.. commands, .. names])
                : UsageErrors.TooMany(path, parse.UnmatchedTokens[0]);
        }

        if (parse.Errors.Count > 0)
        {
            throw InOurWords(parse.Errors[0], path);
        }

        RefuseEmptyWords(result, path);
    }

    // The parser takes "--verbose=yes" for "--verbose yes", and "yes" for an argument.
    private static void RefuseNeedlessValues(IReadOnlyList<string> words, string path, Option[] options)
    {
        string[] before = [.. words.TakeWhile(word => word is not "--")];
        if (options.FirstOrDefault(option => option.Arity.MaximumNumberOfValues == 0
            && before.Any(word => word.StartsWith(option.Name + "=", StringComparison.Ordinal))) is { } option)
        {
            throw UsageErrors.TakesNoValue(path, option);
        }
    }

    // An empty word is mostly a variable of a script that was not set; as a path it would mean the folder one stands in.
    private static void RefuseEmptyWords(CommandResult result, string path)
    {
        foreach (SymbolResult child in result.Children.Where(child => child.Tokens.Any(token => token.Value.Trim().Length == 0)))
        {
            throw child is OptionResult option ? UsageErrors.NoValue(path, option.Option) : UsageErrors.EmptyArgument(path, ((ArgumentResult)child).Argument);
        }
    }

    private static void RefuseSwallowedOptions(CommandResult result, string path, string[] names)
    {
        foreach (OptionResult option in result.Children.OfType<OptionResult>())
        {
            if (option.Tokens.Any(token => names.Contains(token.Value, StringComparer.Ordinal)))
            {
                throw UsageErrors.NoValue(path, option.Option);
            }
        }
    }

    private static void RefuseUnknownOptions(ParseResult parse, string path, string[] names)
    {
        Token[] literal = [.. parse.Tokens.SkipWhile(token => token.Type != TokenType.DoubleDash)];
        IEnumerable<string> arguments = parse.CommandResult.Children.OfType<ArgumentResult>()
            .SelectMany(argument => argument.Tokens)
            .Where(token => !literal.Contains(token))
            .Select(token => token.Value)
            .Concat(parse.UnmatchedTokens);
        if (arguments.FirstOrDefault(value => value.Length > 1 && value[0] == '-') is { } unknown)
        {
            // "--ot=x" is an unknown "--ot".
            throw UsageErrors.UnknownOption(path, unknown.Split('=')[0], names);
        }
    }

    private static ChannelAuditException InOurWords(ParseError error, string path) => error.SymbolResult switch
    {
        OptionResult { Tokens.Count: 0 } option => UsageErrors.NoValue(path, option.Option),
        OptionResult { Tokens.Count: > 1 } option => UsageErrors.OptionTwice(path, option.Option),
        ArgumentResult { Tokens.Count: 0 } argument => UsageErrors.NoArgument(path, argument.Argument),
        CommandResult { Command.Subcommands.Count: > 0 } command =>
            UsageErrors.NoCommand(path, [.. command.Command.Subcommands.Select(subcommand => subcommand.Name)]),
        _ => UsageErrors.Other(path, error.Message),
    };

    private static IEnumerable<Option> OptionsOf(CommandResult result)
    {
        for (SymbolResult? at = result; at is not null; at = at.Parent)
        {
            if (at is not CommandResult command)
            {
                continue;
            }

            foreach (Option option in command.Command.Options.Where(option => option.Recursive || ReferenceEquals(at, result)))
            {
                yield return option;
            }
        }
    }

    private static string PathOf(CommandResult result) => result.Parent is CommandResult parent
        ? $"{PathOf(parent)} {result.Command.Name}"
        : result.Command.Name;
}
