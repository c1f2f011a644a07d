using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Impedance;
using ChannelAudit.Reports.Console;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>impedance</c>: a meter's readings to grades, contacts and what to do.</summary>
internal static class ImpedanceCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the technician who has just read the meter, while the participant is still in the chair. You get
            every pair graded (good below 5 kΩ, wait from 5 to 20, redo above), each electrode and the ground on
            its own, warnings of readings that are too good to be true or do not fit together, what to do, and
            when to measure again. Readings say nothing certain about the signal, and never change a verdict.
            """,
        Notes =
            """
            READINGS is a table with tabs between columns, a line for each reading (docs/impedance.md):
              site   pair           kohm  time   phase
              cheek  a-b            4.8   10:05  before
              cheek  a-ground       3.9   10:05  before
              cheek  b-ground       4.1   10:05  before
              cheek  cheek.b-eye.a  5.2   10:06  before
            a and b are the first and second electrode of the site. The last line, from site to site, is the
            only one that can show gel between sites. time and phase may be left out.

            Exit codes: 0 done, whatever the grades; 2 wrong usage, setup or readings.
            """,
        Examples =
        [
            new("channelaudit impedance K07.tsv", "grades, contacts, and what to do"),
            new("channelaudit impedance K07.tsv --setup setup.toml", "names of sites checked; sites and neighbours that were not read are named"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var file = new Argument<string>("READINGS") { Description = "a table of readings: site, pair, kohm, and time and phase if you like" };
        var setup = new Option<string>("--setup")
        {
            HelpName = "FILE",
            Description = "what was where: sites, their neighbours, ids of electrodes",
        };
        var command = new Command("impedance", "Grades a meter's readings of the electrodes, and says what to do about them.") { file, setup };
        command.SetAction(parse => Run(parse.GetRequiredValue(file), parse.GetValue(setup), context));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string file, string? setupFile, CommandContext context)
    {
        StudySetup setup = setupFile is null ? StudySetup.Empty : SetupFile.Read(setupFile);
        ImpedanceLog log = ImpedanceLog.Read(file, setup);
        ImmutableArray<(string? Recording, ImpedanceReport Report)> reports = log.NamesRecordings
            ? [.. log.Recordings.Select(recording => ((string?)recording, ImpedanceReport.Of(log.For(recording), setup)))]
            : [(null, ImpedanceReport.Of(log, setup))];
        context.Output.Write(ImpedanceScreen.Render(reports, log.Warnings, context.Style));
        return ExitCode.Done;
    }
}
