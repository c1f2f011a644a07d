using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace ChannelAudit.Cli.Completion;

/// <summary>
/// Answers a shell's <c>[suggest:POSITION] LINE</c>: what can stand at the cursor. No answer means: files and folders, as the shell knows them.
/// </summary>
/// <remarks>The form is that of the library's own directive, which works only below its root command; that one is named after the running process.</remarks>
internal static class Suggestions
{
    private const string Opening = "[suggest";

    /// <summary>Whether the words are a shell's question.</summary>
    public static bool AreAskedBy(string[] arguments) =>
        arguments.Length > 0 && arguments[0].StartsWith(Opening, StringComparison.Ordinal) && arguments[0].EndsWith(']');

    /// <summary>Writes the words that can stand at the cursor, one a line, in ordinal order; nothing when only a path can.</summary>
    /// <param name="root">All commands.</param>
    /// <param name="arguments">
    /// The directive with the cursor's place in the line, then the line behind the program's name. A place beyond the line, or none, is its end.
    /// </param>
    /// <param name="output">For the shell.</param>
    /// <returns>The exit code.</returns>
    public static int Write(Command root, string[] arguments, TextWriter output)
    {
        string line = arguments.Length > 1 ? arguments[1] : string.Empty;
        string place = arguments[0][Opening.Length..^1].TrimStart(':');
        int position = int.TryParse(place, NumberStyles.None, CultureInfo.InvariantCulture, out int given) ? Math.Min(given, line.Length) : line.Length;
        foreach (string word in At(root, line[..position]))
        {
            output.Write(word + "\n");
        }

        return ExitCode.Done;
    }

    private static string[] At(Command root, string before)
    {
        int start = before.LastIndexOfAny([' ', '\t']) + 1;
        string word = before[start..];

        // "--figures=s" asks for what "--figures s" asks for.
        int equals = word.StartsWith('-') ? word.IndexOf('=', StringComparison.Ordinal) : -1;
        string kept = word[..(equals + 1)];
        string asked = word[(equals + 1)..];
        string line = equals < 0 ? before : $"{before[..start]}{word[..equals]} {asked}";

        ParseResult parse = root.Parse(line, CommandLine.Parsing);
        if (OnlyPathsCanFollow(parse, before[..start], asked))
        {
            return [];
        }

        return
        [
            .. parse.GetCompletions(line.Length)
                .Select(item => item.InsertText ?? item.Label)
                .Where(text => text.StartsWith(asked, StringComparison.Ordinal) && (text[0] != '-' || IsOptionAsked(parse, text, asked)))
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
                .Select(text => kept + text),
        ];
    }

    // Behind two dashes everything is a path; behind a command that does not exist nothing is known.
    private static bool OnlyPathsCanFollow(ParseResult parse, string wordsBefore, string asked) =>
        wordsBefore.Split([' ', '\t']).Contains("--", StringComparer.Ordinal)
        || parse.UnmatchedTokens.Any(word => !string.Equals(word, asked, StringComparison.Ordinal));

    // Where a path can stand, options would hide the shell's files until a dash is typed. Short names only repeat the long ones.
    private static bool IsOptionAsked(ParseResult parse, string option, string asked) =>
        option.StartsWith("--", StringComparison.Ordinal)
        && (asked.StartsWith('-') || (parse.CommandResult.Command.Arguments.Count == 0 && parse.CommandResult.Command.Subcommands.Count == 0));
}
