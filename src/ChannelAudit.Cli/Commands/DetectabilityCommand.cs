using System.CommandLine;
using ChannelAudit.Cli.Silence;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>detectability</c>: what it means that nothing was found.</summary>
internal static class DetectabilityCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the reviewer who asks what a pass is worth: known faults of rising size are planted in copies
            of your own recording, where nothing is found as recorded, and audited by the same limits. You get
            for each fault the size from which it is found half of the time and 9 times in 10, with intervals,
            and what this recording cannot show at all. The file is only read; no copy goes to disk.
            """,
        Notes =
            """
            Faults: line-noise, narrow-band, noise-floor, bridge-two and bridge-one (or bridge for both),
            clipping, flatline, dropout, drift, low-frequency, pops, weak-response. The same recording and
            options give the same numbers.

            Exit codes: 0 done; 2 wrong usage, setup, criteria or events; 3 the recording could not be read;
            130 interrupted, with no file changed; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit detectability K03.edf --setup setup.toml", "all faults, in a minute or two"),
            new("channelaudit detectability K03.edf --setup setup.toml --faults bridge,line-noise --repeats 10", "two of them, more exactly"),
            new("channelaudit detectability K03.edf --setup setup.toml --out K03-audit", "into the audit of K03, whose report then has a section on it"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var options = new DetectabilityOptionSet();
        var command = new Command("detectability", "Says what a pass is worth: plants known faults, counts those found.")
        {
            options.Recording, options.Setup, options.Criteria, options.Events, options.Faults, options.Repeats, options.Minutes, options.Jobs, options.Out,
        };
        command.SetAction((parse, cancel) => Task.FromResult(SilenceRunner.Run(options.Request(parse), context, cancel)));
        help.Add(command, Help);
        return command;
    }
}
