using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Cli.Silence;
using ChannelAudit.Detectability;

namespace ChannelAudit.Cli.Commands;

/// <summary>The words that <c>detectability</c> takes.</summary>
internal sealed class DetectabilityOptionSet
{
    private const int MostRepeats = 100;
    private const int MostMinutes = 600;
    private const int MostJobs = 1024;

    private static readonly string[] Known = [.. DetectabilityStudy.Names.Concat(DetectabilityStudy.Reasons).Distinct(StringComparer.Ordinal)];

    /// <summary>The recording.</summary>
    public Argument<string> Recording { get; } = new("RECORDING") { Description = "the recording (EDF, BDF or delimited text); it is only read" };

    /// <summary>The setup file.</summary>
    public Option<string> Setup { get; } = new("--setup") { HelpName = "FILE", Description = "what was where, as for screen" };

    /// <summary>The criteria file.</summary>
    public Option<string> Criteria { get; } = new("--criteria") { HelpName = "FILE", Description = "limits that differ from those of: channelaudit criteria show" };

    /// <summary>The events table.</summary>
    public Option<string> Events { get; } = new("--events") { HelpName = "FILE", Description = "where the trials are, as for screen" };

    /// <summary>The faults.</summary>
    public Option<string> Faults { get; } = new("--faults")
    {
        HelpName = "CODE[,CODE]",
        Description = "faults to plant; left out: all",
        CompletionSources = { Known },
    };

    /// <summary>Rounds.</summary>
    public Option<int?> Repeats { get; } = new("--repeats")
    {
        HelpName = "N",
        Description = "audits for each fault and size, each with other places; left out: 4",
    };

    /// <summary>The first minutes.</summary>
    public Option<int?> Minutes { get; } = new("--minutes")
    {
        HelpName = "N",
        Description = "use the first N minutes of the recording; left out: 15",
    };

    /// <summary>Threads.</summary>
    public Option<int?> Jobs { get; } = new("--jobs")
    {
        HelpName = "N",
        Description = "audits at the same time; left out: as many as there are cores",
    };

    /// <summary>The output folder.</summary>
    public Option<string> Out { get; } = new("--out")
    {
        HelpName = "DIR",
        Description = "write table, picture and text: into the audit of this recording, whose report then shows it, or a new folder",
    };

    /// <summary>What was asked for.</summary>
    /// <exception cref="ChannelAuditException">When a word or a number is none of those that an option takes.</exception>
    public SilenceRequest Request(ParseResult parse) => new()
    {
        RecordingFile = parse.GetRequiredValue(Recording),
        SetupFile = parse.GetValue(Setup),
        CriteriaFile = parse.GetValue(Criteria),
        EventsFile = parse.GetValue(Events),
        OutFolder = parse.GetValue(Out),
        Options = new DetectabilityOptions
        {
            Faults = FaultsOf(parse.GetValue(Faults)),
            Repeats = Within(Repeats, parse.GetValue(Repeats) ?? 4, MostRepeats),
            Minutes = Within(Minutes, parse.GetValue(Minutes) ?? 15, MostMinutes),
            Jobs = Within(Jobs, parse.GetValue(Jobs) ?? Environment.ProcessorCount, MostJobs),
        },
    };

    private static ImmutableArray<string> FaultsOf(string? given)
    {
        ImmutableArray<string> words = given is null ? [] : [.. given.Split(',', StringSplitOptions.TrimEntries)];
        return words.FirstOrDefault(word => !Known.Contains(word, StringComparer.Ordinal)) is { } unknown
            ? throw UsageErrors.NotAmong("--faults", unknown, Known)
            : words;
    }

    private static int Within(Option option, int given, int most) => given >= 1 && given <= most ? given : throw UsageErrors.OutOfRange(option.Name, given, 1, most);
}
