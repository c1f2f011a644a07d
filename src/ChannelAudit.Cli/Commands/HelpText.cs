using System.Collections.Immutable;

namespace ChannelAudit.Cli.Commands;

/// <summary>What a command's help says beside its arguments and options.</summary>
internal sealed record HelpText
{
    /// <summary>Who uses the command, when, and what comes out; whole lines.</summary>
    public required string Purpose { get; init; }

    /// <summary>What else there is to know, for instance exit codes; whole lines, or empty.</summary>
    public string Notes { get; init; } = string.Empty;

    /// <summary>What stands at the end, the commonest first.</summary>
    public required ImmutableArray<HelpExample> Examples { get; init; }
}
