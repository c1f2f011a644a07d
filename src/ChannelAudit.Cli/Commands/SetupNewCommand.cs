using System.CommandLine;
using ChannelAudit.Drafts;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>setup new</c>.</summary>
internal static class SetupNewCommand
{
    private const string StandardOutput = "-";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the technician, once a study, as soon as there is a recording to try. You get a setup file with
            a site for each channel and the labels of the trials; all that the recording cannot tell stands in
            it as lines to complete. It guesses nothing, repeats no participant field of a header, and never
            writes over a file. As it is written it changes no verdict.
            """,
        Examples =
        [
            new("channelaudit setup new P07.edf", "into setup.toml in this folder"),
            new("channelaudit setup new P07.edf --out study/setup.toml", "into a file elsewhere"),
            new("channelaudit setup new P07.edf --out -", "only to be seen"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var recording = new Argument<string>("RECORDING") { Description = "one recording of the study (EDF, BDF or delimited text)" };
        var file = new Option<string>("--out")
        {
            HelpName = "FILE",
            Description = "the file to write, which must not be there yet; - prints it instead",
            DefaultValueFactory = _ => "setup.toml",
        };
        var command = new Command("new", "Writes a setup file to complete, from the labels in a recording.") { recording, file };
        command.SetAction(parse =>
        {
            Run(parse.GetRequiredValue(recording), parse.GetRequiredValue(file), context.Output);
            return ExitCode.Done;
        });
        help.Add(command, Help);
        return command;
    }

    private static void Run(string recording, string file, TextWriter output)
    {
        if (!File.Exists(recording))
        {
            throw UsageErrors.NoFile("setup new", recording);
        }

        if (string.Equals(file, StandardOutput, StringComparison.Ordinal))
        {
            output.Write(SetupDraft.Of(recording).ToText());
            return;
        }

        NewFile.Check(file, FileOption.Out);
        SetupDraft draft = SetupDraft.Of(recording);
        NewFile.Write(file, draft.ToText(), FileOption.Out);
        string sites = draft.Sites.Length == 1 ? "1 site" : FormattableString.Invariant($"{draft.Sites.Length} sites");
        string labels = draft.Events.Labels.Length == 1 ? "1 label" : FormattableString.Invariant($"{draft.Events.Labels.Length} labels");
        output.Write($"Written to {OneLine.Of(file)}: {sites}, {labels} of trials, and lines to complete\n");
        output.Write(draft.LacksRate ? "Complete sampling_hz first: without it the recording cannot be read.\n" : string.Empty);
        output.Write($"Then: channelaudit setup check {InShell(file)} {InShell(recording)}\n");
    }

    // Fit to be copied to a command line; most names need no quotes.
    private static string InShell(string path) => path.Contains(' ', StringComparison.Ordinal) ? $"\"{OneLine.Of(path)}\"" : OneLine.Of(path);
}
