using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using ChannelAudit.Decisions;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Cli.Commands;

/// <summary>The words that <c>decide</c> takes.</summary>
internal sealed class DecideOptions
{
    private const string Name = "channelaudit decide";

    private static readonly string[] Verdicts = ["pass", "questionable", "reject"];

    /// <summary>The audit.</summary>
    public Argument<string> Folder { get; } = new("DIR") { Description = "the folder of an audit" };

    /// <summary>The recording.</summary>
    public Option<string> Recording { get; } = new("--recording") { HelpName = "ID", Description = "the recording's id, as in verdicts.tsv; may be left out where there is one" };

    /// <summary>The channel.</summary>
    public Option<string> Channel { get; } = new("--channel") { HelpName = "NAME", Description = "the channel, as in verdicts.tsv; without --trial its own verdict" };

    /// <summary>The trial.</summary>
    public Option<string> Trial { get; } = new("--trial") { HelpName = "N", Description = "the number of a trial; without --channel in all channels" };

    /// <summary>The verdict.</summary>
    public Option<string> Verdict { get; } = new("--verdict") { HelpName = "pass|questionable|reject", Description = "your verdict over the computed one", CompletionSources = { Verdicts } };

    /// <summary>The reason.</summary>
    public Option<string> Reason { get; } = new("--reason") { HelpName = "TEXT", Description = "why, in words that stand alone later" };

    /// <summary>The person.</summary>
    public Option<string> By { get; } = new("--by") { HelpName = "NAME", Description = "who decides" };

    /// <summary>The decision to take back.</summary>
    public Option<string> Withdraw { get; } = new("--withdraw") { HelpName = "N", Description = "take decision N back; what was before it holds again" };

    /// <summary>Many decisions.</summary>
    public Option<string> From { get; } = new("--from")
    {
        HelpName = "FILE",
        Description = "many at once, all or none: a table with recording, channel, trial, verdict, reason and, without --by, by",
    };

    /// <summary>Whether nothing is to be decided, only listed.</summary>
    public bool OnlyLists(ParseResult parse) => Given(parse, Recording, Channel, Trial, Verdict, Reason, By, Withdraw, From).Length == 0;

    /// <summary>The decisions that were asked for.</summary>
    /// <exception cref="ChannelAuditException">When something is missing, or cannot be given together.</exception>
    public ImmutableArray<DecisionRequest> Requests(ParseResult parse)
    {
        if (parse.GetValue(From) is { } file)
        {
            RefuseBeside(parse, From, Recording, Channel, Trial, Verdict, Reason, Withdraw);
            return DecisionTable.Read(file, parse.GetValue(By));
        }

        string word = Needed(parse, Verdict);
        Grade verdict = GradeCode.From(word) ?? throw UsageErrors.NotAmong("--verdict", word, Verdicts);
        return [new DecisionRequest(parse.GetValue(Recording), parse.GetValue(Channel), Number(parse, Trial), verdict, Needed(parse, Reason), Needed(parse, By))];
    }

    /// <summary>The decision to take back, who does, and why; null when none is.</summary>
    /// <exception cref="ChannelAuditException">When something is missing, or cannot be given together.</exception>
    public (int Number, string By, string Reason)? Withdrawal(ParseResult parse)
    {
        if (Number(parse, Withdraw) is not { } number)
        {
            return null;
        }

        RefuseBeside(parse, Withdraw, Recording, Channel, Trial, Verdict, From);
        return (number, Needed(parse, By), Needed(parse, Reason));
    }

    private static int? Number(ParseResult parse, Option<string> option) => parse.GetValue(option) is not { } text ? null
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number
        : throw UsageErrors.NoNumber(option.Name, text);

    private static string Needed(ParseResult parse, Option<string> option) => parse.GetValue(option) ?? throw UsageErrors.OptionMissing(Name, option);

    private static void RefuseBeside(ParseResult parse, Option one, params Option[] others)
    {
        if (Given(parse, others) is [{ } other, ..])
        {
            throw UsageErrors.NotTogether(Name, one.Name, other.Name);
        }
    }

    private static Option[] Given(ParseResult parse, params Option[] options) => [.. options.Where(option => parse.GetResult(option) is { Implicit: false })];
}
