using System.CommandLine;
using ChannelAudit.Cli.Piloting;

namespace ChannelAudit.Cli.Commands;

/// <summary>The words that <c>pilot</c> takes.</summary>
internal sealed class PilotOptions
{
    /// <summary>The recording.</summary>
    public Argument<string?> Recording { get; } = new("RECORDING")
    {
        Description = "a short recording (EDF, BDF or delimited text): rest, then each muscle once",
        Arity = ArgumentArity.ZeroOrOne,
    };

    /// <summary>The setup file.</summary>
    public Option<string> Setup { get; } = new("--setup")
    {
        HelpName = "FILE",
        Description = "what was where: sites, tasks by movement, adjacent sites; setup new writes one to fill in",
    };

    /// <summary>The criteria file.</summary>
    public Option<string> Criteria { get; } = new("--criteria")
    {
        HelpName = "FILE",
        Description = "limits that differ from those of: channelaudit criteria show",
    };

    /// <summary>Impedance readings.</summary>
    public Option<string> Impedance { get; } = new("--impedance")
    {
        HelpName = "FILE",
        Description = "readings of the meter; graded apart from the signal and shown beside it",
    };

    /// <summary>The events table.</summary>
    public Option<string> Events { get; } = new("--events")
    {
        HelpName = "FILE",
        Description = "where rest, tasks and taps are: a table with onset, duration and trial_type, in seconds",
    };

    /// <summary>The output folder.</summary>
    public Option<string> Out { get; } = new("--out")
    {
        HelpName = "DIR",
        Description = "folder for the picture, the list and the tables; the same folder again says what a redo has changed",
        DefaultValueFactory = _ => "audit",
    };

    /// <summary>No picture.</summary>
    public Option<bool> NoPicture { get; } = new("--no-picture")
    {
        Description = "leave out pilot.png",
        Arity = ArgumentArity.Zero,
    };

    /// <summary>The recording is still being written.</summary>
    public Option<bool> Follow { get; } = new("--follow")
    {
        Description = "the recording is still being written: renew the answer until it stops growing, or Ctrl-C",
        Arity = ArgumentArity.Zero,
    };

    /// <summary>Print the protocol.</summary>
    public Option<bool> Protocol { get; } = new("--protocol")
    {
        Description = "print what to record to settle whether gel joins two sites; needs --setup and no recording",
        Arity = ArgumentArity.Zero,
    };

    /// <summary>Why the session is started all the same.</summary>
    public Option<string> StartBecause { get; } = new("--start-because")
    {
        HelpName = "TEXT",
        Description = "you start although the answer is another: why, kept in attempts.json for the reviewer",
    };

    /// <summary>What was asked for.</summary>
    /// <exception cref="ChannelAuditException">When the recording is missing.</exception>
    public PilotRequest Request(ParseResult parse) => new()
    {
        RecordingFile = parse.GetValue(Recording) ?? throw UsageErrors.NoArgument("channelaudit pilot", Recording),
        SetupFile = parse.GetValue(Setup),
        CriteriaFile = parse.GetValue(Criteria),
        ImpedanceFile = parse.GetValue(Impedance),
        EventsFile = parse.GetValue(Events),
        OutFolder = parse.GetRequiredValue(Out),
        WithPicture = !parse.GetValue(NoPicture),
        Follow = parse.GetValue(Follow),
        StartBecause = parse.GetValue(StartBecause),
    };
}
