using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Runs;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Cli.Commands;

/// <summary>The words that <c>screen</c> takes.</summary>
internal sealed class ScreenOptions
{
    /// <summary>What <c>--parquet</c> is said to do.</summary>
    public const string ParquetDescription = "measures, pairs and verdicts of the whole run as Parquet files too, for an archive";

    private const int MostJobs = 1024;

    private static readonly string[] FigureWords = ["none", "summary", "all"];
    private static readonly string[] FailOnWords = ["questionable", "reject"];

    /// <summary>Recordings and folders.</summary>
    public Argument<string[]> Paths { get; } = new("PATH")
    {
        Description = "recordings (EDF, BDF or delimited text), folders that are searched for them, patterns in quotes",
        Arity = ArgumentArity.ZeroOrMore,
    };

    /// <summary>A list of recordings.</summary>
    public Option<string> List { get; } = new("--list")
    {
        HelpName = "FILE",
        Description = "more of them: one path a line, relative to the list's own folder",
    };

    /// <summary>The setup file.</summary>
    public Option<string> Setup { get; } = new("--setup")
    {
        HelpName = "FILE",
        Description = "what was where: sites, adjacent sites, trials, rest; without it each channel stands under its label",
    };

    /// <summary>The criteria file.</summary>
    public Option<string> Criteria { get; } = new("--criteria")
    {
        HelpName = "FILE",
        Description = "limits that differ from those of: channelaudit criteria show",
    };

    /// <summary>The events table.</summary>
    public Option<string> Events { get; } = new("--events")
    {
        HelpName = "FILE",
        Description = "where the trials are: a table with onset, duration and trial_type, in seconds",
    };

    /// <summary>The impedance readings.</summary>
    public Option<string> Impedance { get; } = new("--impedance")
    {
        HelpName = "FILE",
        Description = "a meter's readings, graded in a column of their own; of several recordings, with a column recording",
    };

    /// <summary>The output folder.</summary>
    public Option<string> Out { get; } = new("--out")
    {
        HelpName = "DIR",
        Description = "folder for tables, report and figures; an audit that stands there is brought up to date",
        DefaultValueFactory = _ => "audit",
    };

    /// <summary>The pictures to draw.</summary>
    public Option<string> Figures { get; } = new("--figures")
    {
        HelpName = "none|summary|all",
        Description = "pictures to draw; left out: all for one recording, summary for several",
        CompletionSources = { FigureWords },
    };

    /// <summary>Recordings at a time.</summary>
    public Option<int?> Jobs { get; } = new("--jobs")
    {
        HelpName = "N",
        Description = "recordings audited at the same time; left out: as many as there are cores",
    };

    /// <summary>The part that this machine audits.</summary>
    public Option<string> Shard { get; } = new("--shard")
    {
        HelpName = "I/N",
        Description = "audit only every Nth recording, from the Ith on, into --out; channelaudit merge puts the N folders together",
    };

    /// <summary>Whether tables are written as Parquet files too.</summary>
    public Option<bool> Parquet { get; } = new("--parquet") { Description = ParquetDescription };

    /// <summary>The verdict that makes the run fail.</summary>
    public Option<string> FailOn { get; } = new("--fail-on")
    {
        HelpName = "questionable|reject",
        Description = "exit with 1 when a channel or trial is that bad or worse",
        CompletionSources = { FailOnWords },
    };

    /// <summary>What was asked for.</summary>
    /// <exception cref="ChannelAuditException">When a word is none of those that an option takes.</exception>
    public ScreenRequest Request(ParseResult parse) => new()
    {
        Paths = PathsOf(parse),
        SetupFile = parse.GetValue(Setup),
        CriteriaFile = parse.GetValue(Criteria),
        EventsFile = parse.GetValue(Events),
        ImpedanceFile = parse.GetValue(Impedance),
        OutFolder = parse.GetRequiredValue(Out),
        Figures = parse.GetValue(Figures) switch
        {
            null => null,
            "none" => FigureChoice.None,
            "summary" => FigureChoice.Summary,
            "all" => FigureChoice.All,
            { } other => throw UsageErrors.NotAmong("--figures", other, FigureWords),
        },
        Jobs = parse.GetValue(Jobs) switch
        {
            null => Environment.ProcessorCount,
            > 0 and <= MostJobs and { } jobs => jobs,
            { } other => throw UsageErrors.OutOfRange("--jobs", other, 1, MostJobs),
        },
        WithParquet = parse.GetValue(Parquet) && parse.GetValue(Shard) is not null ? throw UsageErrors.ParquetOfShare() : parse.GetValue(Parquet),
        Share = parse.GetValue(Shard) is { } shard ? RecordingShare.Parse(shard) ?? throw UsageErrors.NoShare(shard) : null,
        FailOn = parse.GetValue(FailOn) switch
        {
            null => null,
            "questionable" => Grade.Questionable,
            "reject" => Grade.Reject,
            { } other => throw UsageErrors.NotAmong("--fail-on", other, FailOnWords),
        },
    };

    private ImmutableArray<string> PathsOf(ParseResult parse)
    {
        ImmutableArray<string> paths = [.. parse.GetValue(Paths) ?? [], .. parse.GetValue(List) is { } list ? RecordingList.Listed(list) : []];
        return paths.IsEmpty ? throw UsageErrors.NoArgument("channelaudit screen", Paths) : paths;
    }
}
