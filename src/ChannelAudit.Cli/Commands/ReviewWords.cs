using System.CommandLine;
using System.Globalization;
using ChannelAudit.Reports.Reviewing;

namespace ChannelAudit.Cli.Commands;

/// <summary>The words that <c>review</c> takes.</summary>
internal sealed class ReviewWords
{
    private const string Name = "channelaudit review";
    private const int HighestPort = 65535;

    private static readonly string[] Scopes = ["questionable", "flagged", "all"];

    /// <summary>The audit.</summary>
    public Argument<string> Folder { get; } = new("DIR") { Description = "the folder of an audit" };

    /// <summary>The recordings.</summary>
    public Option<string> Data { get; } = new("--data")
    {
        HelpName = "ROOT",
        Description = "the folder that screen was given: its recordings are drawn; without it only the pictures of the audit are shown",
    };

    /// <summary>The person.</summary>
    public Option<string> By { get; } = new("--by") { HelpName = "NAME", Description = "who decides; needed unless --read-only is given" };

    /// <summary>Whether blind.</summary>
    public Option<bool> Blind { get; } = new("--blind")
    {
        Description = "hide condition, computed verdict and other people's decisions, in a shuffled order; needs --data",
        Arity = ArgumentArity.Zero,
    };

    /// <summary>The seed of the order.</summary>
    public Option<int?> Seed { get; } = new("--seed")
    {
        HelpName = "N",
        Description = "the order of a blind review; left out: that of your last blind decision here, else a new one",
    };

    /// <summary>Which cells.</summary>
    public Option<string> Cells { get; } = new("--cells")
    {
        HelpName = "questionable|flagged|all",
        Description = "what is left to look at: trials in doubt, those and the rejected (the default), or every one (the default of --blind)",
        CompletionSources = { Scopes },
    };

    /// <summary>Whether nothing can be decided.</summary>
    public Option<bool> ReadOnly { get; } = new("--read-only") { Description = "look only: nothing can be decided", Arity = ArgumentArity.Zero };

    /// <summary>The port.</summary>
    public Option<int?> Port { get; } = new("--port") { HelpName = "N", Description = "the port on this machine; left out: any that is free" };

    /// <summary>How the audit is reviewed, and on which port.</summary>
    /// <exception cref="ChannelAuditException">When something is missing, or cannot be given together.</exception>
    public (ReviewOptions Options, int Port) Of(ParseResult parse)
    {
        if (!parse.GetValue(ReadOnly) && parse.GetValue(By) is null)
        {
            throw UsageErrors.OptionMissing(Name, By);
        }

        if (parse.GetValue(Seed) is not null && !parse.GetValue(Blind))
        {
            throw UsageErrors.Needs(Name, Seed.Name, Blind.Name);
        }

        return (
            new ReviewOptions
            {
                Folder = parse.GetRequiredValue(Folder),
                DataRoot = parse.GetValue(Data),
                By = parse.GetValue(By),
                IsBlind = parse.GetValue(Blind),
                IsReadOnly = parse.GetValue(ReadOnly),
                Seed = (uint?)Within(Seed.Name, parse.GetValue(Seed), int.MaxValue),
                Scope = parse.GetValue(Cells) is { } word ? ScopeOf(word) : null,
            },
            Within(Port.Name, parse.GetValue(Port), HighestPort) ?? 0);
    }

    /// <summary>The words for the program that serves the page.</summary>
    public static string[] For(ReviewOptions options, int port) =>
    [
        options.Folder,
        "--follow-input",
        "--port",
        port.ToString(CultureInfo.InvariantCulture),
        .. options.DataRoot is { } data ? ["--data", data] : Array.Empty<string>(),
        .. options.By is { } by ? ["--by", by] : Array.Empty<string>(),
        .. options.IsBlind ? ["--blind"] : Array.Empty<string>(),
        .. options.IsReadOnly ? ["--read-only"] : Array.Empty<string>(),
        .. options.Seed is { } seed ? ["--seed", seed.ToString(CultureInfo.InvariantCulture)] : Array.Empty<string>(),
        .. options.Scope is { } scope ? ["--cells", Scopes[(int)scope]] : Array.Empty<string>(),
    ];

    private static ReviewScope ScopeOf(string word) => Array.IndexOf(Scopes, word) is >= 0 and int place ? (ReviewScope)place : throw UsageErrors.NotAmong("--cells", word, Scopes);

    private static int? Within(string option, int? given, int most) => given is < 0 || given > most ? throw UsageErrors.OutOfRange(option, given.Value, 0, most) : given;
}
