using System.CommandLine;
using ChannelAudit.Reports.Reviewing;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>review</c>: a local page to look at trials and decide.</summary>
internal static class ReviewCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst who has to settle what the rules left in doubt, and for a second person who judges
            blind. You get a page in your own browser, on this machine only: the session, then one trial of one
            channel at a time with its trace, its spectrum, the other channels and what was found; decide with
            a key and a reason, and go on. Decisions are those of channelaudit decide. Ctrl-C ends it and
            brings tables and pages up to date.
            """,
        Notes =
            """
            Each address that is shown works once and for one browser; the next one is shown then. Two people
            may review one folder at the same time, each with a review of their own.

            Exit codes: 0 ended by Ctrl-C; 2 wrong usage, no audit, none of its recordings below --data,
            a ledger that was changed, or a port that is taken; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit review audit --data study --by R.Viewer", "go through what is in doubt, then through what was rejected"),
            new("channelaudit review audit --data study --by S.Econd --blind", "a second judgement, in a shuffled order that knows no verdicts"),
            new("channelaudit review audit --read-only", "look only, at the pictures of the audit"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        ReviewWords words = new();
        Command command = new("review", "Opens a page on this machine to look at trials and decide.")
        {
            words.Folder, words.Data, words.By, words.Blind, words.Seed, words.Cells, words.ReadOnly, words.Port,
        };
        command.SetAction((parse, cancel) => Run(words, parse, context, cancel));
        help.Add(command, Help);
        return command;
    }

    // The page is a program of its own: the web must neither slow this one nor be part of its native build.
    private static async Task<int> Run(ReviewWords words, ParseResult parse, CommandContext context, CancellationToken cancel)
    {
        (ReviewOptions options, int port) = words.Of(parse);
        ReviewBook.Checked(options with { Version = ProductVersion.Text });
        context.Log.Information("starting {Program}", ReviewProgram.Path);
        return await ReviewProgram.Run(ReviewWords.For(options, port), cancel);
    }
}
