using System.CommandLine;
using ChannelAudit.Measures;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Cli;

/// <summary>Every message about a command line that cannot be understood.</summary>
internal static class UsageErrors
{
    /// <summary>No command, or none below a command that needs one.</summary>
    public static ChannelAuditException NoCommand(string path, IReadOnlyList<string> commands) => Fault(
        $"{path}: no command given",
        commands.Count == 1
            ? $"write {path} {commands[0]}; {path} --help says what it does"
            : $"one of {string.Join(", ", commands)}; {path} --help says what they do");

    /// <summary>A command that does not exist; a path is probably one to be screened.</summary>
    public static ChannelAuditException UnknownCommand(string path, string given, IReadOnlyList<string> known) => Fault(
        $"{path}: there is no command '{OneLine.Of(given)}'",
        !path.Contains(' ', StringComparison.Ordinal) && Path.Exists(given)
            ? $"did you mean 'channelaudit screen {OneLine.Of(given)}'?"
            : DidYouMean(given, known, path));

    /// <summary>A folder that holds something other than an earlier demo, or a file.</summary>
    public static ChannelAuditException NotForDemo(string folder) => Fault(
        $"{OneLine.Of(folder)}: {(File.Exists(folder) ? "a file, not a folder" : "not empty and not an earlier demo")}", "give a new or an empty folder");

    /// <summary>A folder that holds something other than an earlier gallery.</summary>
    public static ChannelAuditException NotForGallery(string folder) => Fault(
        $"{OneLine.Of(folder)}: not empty and not an earlier gallery", "give a new or an empty folder");

    /// <summary>A folder for tables that holds something.</summary>
    public static ChannelAuditException NotForTables(string folder) => Fault(
        $"{OneLine.Of(folder)}: {(File.Exists(folder) ? "a file, not a folder" : "not empty")}", "name a new or an empty folder with --out");

    /// <summary>A folder that holds something other than an earlier trend.</summary>
    public static ChannelAuditException NotForTrend(string folder) => Fault(
        $"{OneLine.Of(folder)}: {(File.Exists(folder) ? "a file, not a folder" : "not empty and not an earlier trend")}", "name a new or an empty folder with --out");

    /// <summary>Neither a table of labels nor decisions to take for them.</summary>
    public static ChannelAuditException NoLabels() => Fault(
        "channelaudit raters: LABELS is missing", "give a table of labels, or --blind for the blind decisions of the audit; channelaudit raters --help has an example");

    /// <summary>Labels of which none is of anything in the audit.</summary>
    public static ChannelAuditException NoLabelFits(string source, string? cause) => Fault(
        $"{OneLine.Of(source)}: {(cause is null ? "no labels in it" : $"no label is of anything in the audit; the first: {cause}")}",
        "look at the names of recordings, channels and trials in verdicts.tsv");

    /// <summary>Blind decisions asked for where nobody has decided blind.</summary>
    public static ChannelAuditException NoBlindDecision(string folder) => Fault(
        $"{OneLine.Of(folder)}: there are no blind decisions in it", "decide blind first (channelaudit review AUDIT --data FOLDER --blind), or give a table of labels");

    /// <summary>A reason code that does not exist.</summary>
    public static ChannelAuditException UnknownReason(string path, string given, IReadOnlyList<string> codes) => Fault(
        $"{path}: there is no reason '{OneLine.Of(given)}'", ReasonHint(given, codes, path));

    /// <summary>Two things of which only one can be asked for.</summary>
    public static ChannelAuditException NotTogether(string path, string one, string other) => Fault(
        $"{path}: {one} and {other} cannot be given together", "run it once for each");

    /// <summary>An option that means nothing without another.</summary>
    public static ChannelAuditException Needs(string path, string one, string other) => Fault(
        $"{path}: {one} needs {other}", $"write {other} too, or leave {one} out");

    /// <summary>The program that serves the review page is not beside this one.</summary>
    public static ChannelAuditException NoReviewProgram(string program) => Fault(
        $"{OneLine.Of(Path.GetFileName(program))}: not beside channelaudit, or it cannot be started", "build all of it: dotnet build -c Release; the native build has no review page");

    /// <summary>A pilot into the folder of an audit, which it would replace.</summary>
    public static ChannelAuditException AuditInTheWay(string folder) => Fault(
        $"{OneLine.Of(folder)}: holds an audit of screen, which a pilot would replace", "give a folder for this participant: --out P07");

    /// <summary>Not a whole number.</summary>
    public static ChannelAuditException NoNumber(string option, string given) => Fault(
        $"{option}: '{OneLine.Of(given)}' is no number", $"write {option} and a whole number, as verdicts.tsv and decide DIR show them");

    /// <summary>A decision that is on the disk, but in no table yet.</summary>
    public static ChannelAuditException KeptButNotShown(int decisions, ChannelAuditException fault) => new(
        fault.Kind,
        $"{(decisions == 1 ? "the decision is kept" : "the decisions are kept")}, but tables and pages are as before: {fault.Message}",
        $"{fault.Hint}; do not decide again",
        fault);

    /// <summary>A protocol without a setup: whose muscles, and whose wires?</summary>
    public static ChannelAuditException ProtocolNeedsSetup() => Fault(
        "channelaudit pilot: --protocol needs --setup, which names sites and tasks",
        "write --setup FILE; channelaudit setup new RECORDING writes one to fill in");

    /// <summary>An option that does not exist.</summary>
    public static ChannelAuditException UnknownOption(string path, string given, IReadOnlyList<string> options) => Fault(
        $"{path}: there is no option '{OneLine.Of(given)}'", DidYouMean(given, options, path));

    /// <summary>An option without its value.</summary>
    public static ChannelAuditException NoValue(string path, Option option) => Fault(
        $"{path}: {option.Name} needs a value", $"write {option.Name} {option.HelpName}");

    /// <summary>An option that is needed and missing.</summary>
    public static ChannelAuditException OptionMissing(string path, Option option) => Fault(
        $"{path}: {option.Name} is missing", $"write {option.Name} {option.HelpName}: {option.Description}");

    /// <summary>An option that is there or not, with a value.</summary>
    public static ChannelAuditException TakesNoValue(string path, Option option) => Fault(
        $"{path}: {option.Name} takes no value", $"write {option.Name} alone");

    /// <summary>An option that is given again.</summary>
    public static ChannelAuditException OptionTwice(string path, Option option) => Fault(
        $"{path}: {option.Name} is given more than once", "keep one of them");

    /// <summary>An argument that is needed and missing.</summary>
    public static ChannelAuditException NoArgument(string path, Argument argument) => Fault(
        $"{path}: {argument.Name} is missing", $"{argument.Name}: {argument.Description}; {path} --help has an example");

    /// <summary>An argument of no or only blank characters.</summary>
    public static ChannelAuditException EmptyArgument(string path, Argument argument) => Fault(
        $"{path}: {argument.Name} is empty", "write a name between the quotes, or look whether a variable of a script is set");

    /// <summary>More arguments than the command takes.</summary>
    public static ChannelAuditException TooMany(string path, string given) => Fault(
        $"{path}: '{OneLine.Of(given)}' is one too many", $"{path} --help says what can be given");

    /// <summary>A word that is none of those that an option takes.</summary>
    public static ChannelAuditException NotAmong(string option, string given, IReadOnlyList<string> words) => Fault(
        $"{option}: '{OneLine.Of(given)}' is not known",
        (NearestName.Of(given, words) is { } nearest ? $"did you mean '{nearest}'? " : string.Empty)
            + $"{option} takes {string.Join(", ", words.SkipLast(1))} or {words[^1]}");

    /// <summary>A number that is too small or too large.</summary>
    public static ChannelAuditException OutOfRange(string option, int given, int least, int most) => Fault(
        FormattableString.Invariant($"{option}: {given} is not from {least} to {most}"), FormattableString.Invariant($"give a whole number from {least} to {most}, or leave {option} out"));

    /// <summary>A word that is no day.</summary>
    public static ChannelAuditException NoDate(string option, string given) => Fault(
        $"{option}: '{OneLine.Of(given)}' is no date", $"write {option} YYYY-MM-DD, for example {option} 2026-03-01");

    /// <summary>Anything else that the parser does not understand.</summary>
    public static ChannelAuditException Other(string path, string message) => Fault(
        $"{path}: {OneLine.Of(message)}", $"{path} --help says what can be given");

    /// <summary>One events table for several recordings, whose trials would all be those of one.</summary>
    public static ChannelAuditException EventsOfOne(string file, int recordings) => Fault(
        FormattableString.Invariant($"--events: {OneLine.Of(file)} holds the events of one recording, and {recordings} were given"),
        "put a table beside each recording (P07_events.tsv beside P07.edf), or screen one recording at a time");

    /// <summary>A share that is none.</summary>
    public static ChannelAuditException NoShare(string text) => Fault(
        $"--shard: '{OneLine.Of(text)}' is not one of several shares",
        FormattableString.Invariant($"give two whole numbers with a slash, such as 2/8 for the second of eight; at most {RecordingShare.Most} shares"));

    /// <summary>Parquet files of a share, which is no whole.</summary>
    public static ChannelAuditException ParquetOfShare() => Fault(
        "channelaudit screen: --parquet is of a whole run, and --shard asks for a part", "leave --parquet out here, and give it to channelaudit merge");

    /// <summary>Shares of another version.</summary>
    public static ChannelAuditException SharesOfAnotherVersion(string version) => Fault(
        $"the shares were made by version {OneLine.Of(version)}, this is {ProductVersion.Text}",
        "put them together with the version that made them, or run them again with this one");

    /// <summary>A file named on the command line that is not there.</summary>
    public static ChannelAuditException NoFile(string option, string path) => Directory.Exists(path)
        ? Fault($"{option}: {OneLine.Of(path)} is a folder, not a file", "give the file inside the folder")
        : Fault($"{option}: there is no file {OneLine.Of(path)}", "give the path of a file that exists");

    /// <summary>A file that would be written over.</summary>
    public static ChannelAuditException IsThere(string path, FileOption option) => Fault(
        $"{OneLine.Of(path)}: is there already and stays as it is", $"name another file with {option.Name}{OrSee(option)}");

    /// <summary>A file in a folder that is not there.</summary>
    public static ChannelAuditException NoFolderFor(string path, FileOption option) => Fault(
        $"{OneLine.Of(path)}: there is no such folder to write into", $"make the folder first, or name a file elsewhere with {option.Name}");

    /// <summary>A file that the operating system does not let us write.</summary>
    public static ChannelAuditException CannotWrite(string path, FileOption option, Exception cause) => new(
        FaultKind.Usage, $"{OneLine.Of(path)}: cannot be written", $"name one with {option.Name} where you may write{OrSee(option)}", cause);

    private static string OrSee(FileOption option) => option.Prints ? $", or see the text with {option.Name} -" : string.Empty;

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);

    private static string ReasonHint(string given, IReadOnlyList<string> codes, string path) =>
        MeasureCatalog.Contains(given) && codes.Contains(MeasureCatalog.Get(given).Reason, StringComparer.Ordinal)
            ? $"{given} is a measure of the reason '{MeasureCatalog.Get(given).Reason}'"
            : NearestName.Of(given, codes) is { } nearest ? $"did you mean '{nearest}'?" : $"{path} lists all reasons";

    private static string DidYouMean(string given, IReadOnlyList<string> known, string path) =>
        NearestName.Of(given, known) is { } nearest ? $"did you mean '{nearest}'?" : $"{path} --help says what can be given";
}
