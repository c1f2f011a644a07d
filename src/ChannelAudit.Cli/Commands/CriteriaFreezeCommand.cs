using System.CommandLine;
using System.Globalization;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Methods;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>criteria freeze</c>.</summary>
internal static class CriteriaFreezeCommand
{
    private const string Name = "channelaudit criteria freeze";
    private const string StandardOutput = "-";
    private const string DateFormat = "yyyy-MM-dd";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst, before anyone looks at the data, and for the reviewer who asks later whether the
            limits were moved. You get a dated file with every limit in force, to give to --criteria, and on
            standard output a paragraph for a preregistration, in Markdown. Each audit made with the file says
            whether its limits are still those of that day, and names those that are not.
            """,
        Notes =
            """
            The hash stands in the file and in the paragraph. Whoever changes limits, record and hash together
            leaves no trace in the file: keep the paragraph where others can date it.
            """,
        Examples =
        [
            new("channelaudit criteria freeze lab.toml --out frozen.toml > preregistration.md", "a lab's limits as of today, and the paragraph"),
            new("channelaudit criteria freeze --date 2026-03-01 --out frozen.toml", "the defaults, dated by hand: the same bytes whenever it is run"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string?> file = new("CRITERIA.toml") { Description = "limits that differ from the defaults; without it the defaults are frozen", Arity = ArgumentArity.ZeroOrOne };
        Option<string> to = new("--out") { HelpName = "FILE", Description = "the file to write, which must not be there yet; - prints it instead" };
        Option<string> date = new("--date") { HelpName = "DATE", Description = "the day as YYYY-MM-DD; left out: today" };
        Command command = new("freeze", "Writes all limits in force into a dated file that knows when it was changed.") { file, to, date };
        command.SetAction(parse => Run(
            parse.GetValue(file), parse.GetValue(to) ?? throw UsageErrors.OptionMissing(Name, to), DateOf(parse.GetValue(date), context.Clock), context.Output));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string? file, string to, string date, TextWriter output)
    {
        AuditCriteria criteria = file is null ? DefaultCriteria.All : CriteriaFile.Read(file);
        string text = FrozenCriteria.Render(criteria, date, ProductVersion.Text);
        if (string.Equals(to, StandardOutput, StringComparison.Ordinal))
        {
            output.Write(text);
            return ExitCode.Done;
        }

        NewFile.Check(to, FileOption.Out);
        NewFile.Write(to, text, FileOption.Out);
        output.Write(PreregistrationText.Render(criteria, Path.GetFileName(to), date, ProductVersion.Text));
        return ExitCode.Done;
    }

    private static string DateOf(string? given, TimeProvider clock)
    {
        if (given is null)
        {
            return clock.GetLocalNow().ToString(DateFormat, CultureInfo.InvariantCulture);
        }

        return DateOnly.TryParseExact(given, DateFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date)
            ? date.ToString(DateFormat, CultureInfo.InvariantCulture)
            : throw UsageErrors.NoDate("--date", given);
    }
}
