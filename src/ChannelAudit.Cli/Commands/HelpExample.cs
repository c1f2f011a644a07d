namespace ChannelAudit.Cli.Commands;

/// <summary>A command line to copy, and what it does.</summary>
/// <param name="Line">The whole line, from <c>channelaudit</c> on.</param>
/// <param name="What">What it does, in a few words.</param>
internal sealed record HelpExample(string Line, string What);
