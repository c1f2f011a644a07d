using System.CommandLine;
using ChannelAudit.Cli.Merging;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>merge</c>: the shares of a run into one audit.</summary>
internal static class MergeCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For whoever audits more recordings than one machine can in the time. Each machine runs
              channelaudit screen PATH... --shard I/N --out share-I
            with the same paths and options; this puts the N folders together. You get the audit that one
            machine would have written, byte for byte. The shares stay as they are.
            """,
        Notes =
            """
            A share that was broken off goes on where it was when it is run again. The recordings need not be
            within reach here; the files that the run was made with are in the shares.
            docs/guides/cluster.md shows it with a job array.

            Exit codes: 0 done; 2 wrong usage, shares missing, damaged or of different runs; 3 a recording could
            not be read (the others are in the audit); 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit merge share-1 share-2 share-3 --out study-audit", "three shares into one audit"),
            new("channelaudit merge shares/* --out study-audit", "all shares of a folder"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string[]> shares = new("SHARE") { Description = "folders that screen --shard wrote, all of one run, in any order", Arity = ArgumentArity.OneOrMore };
        Option<string> place = new("--out") { HelpName = "DIR", Description = "folder for the audit; one that stands there is brought up to date", DefaultValueFactory = _ => "audit" };
        Option<bool> parquet = new("--parquet") { Description = ScreenOptions.ParquetDescription };
        Command command = new("merge", "Puts the shares of a run together into one audit.") { shares, place, parquet };
        command.SetAction((parse, cancel) => Task.FromResult(new MergeRunner(context.Log, context.Error, context.Style).Run(
            parse.GetRequiredValue(shares), parse.GetRequiredValue(place), parse.GetValue(parquet), context.Output, cancel)));
        help.Add(command, Help);
        return command;
    }
}
