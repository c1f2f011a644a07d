using System.CommandLine;
using System.CommandLine.Completions;
using ChannelAudit.Cli.Gallery;
using ChannelAudit.Reports.Manual;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>explain</c>: what a reason means, and what it looks like.</summary>
internal static class ExplainCommand
{
    private const string Name = "channelaudit explain";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For whoever reads a verdict and asks what its reason means. You get how it is measured, where its
            limits come from, what it can be confused with and what to do; without CODE a list of all
            reasons. With --gallery you get DIR/README.md and a picture for each reason: the fault beside
            what resembles it, made, audited and drawn on the spot (no person was recorded), with the
            verdict that the audit itself gave. The same bytes on every run.
            """,
        Examples =
        [
            new("channelaudit explain", "all reasons, a line each"),
            new("channelaudit explain line-noise", "the page of one"),
            new("channelaudit explain --gallery gallery", "pictures of every fault beside what resembles it"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string?> code = new("CODE") { HelpName = "CODE", Description = "a reason code, as in the tables and on the report", Arity = ArgumentArity.ZeroOrOne };
        code.CompletionSources.Add(_ => ReasonManual.Names.Select(name => new CompletionItem(name)));
        Option<string> gallery = new("--gallery")
        {
            HelpName = "DIR",
            Description = "write pictures of every fault beside what resembles it into a new or empty folder, or over an earlier gallery",
        };
        Command command = new("explain", "Says what a reason means, how it is measured and what to do; draws what it looks like.") { code, gallery };
        command.SetAction((parse, cancel) => Task.FromResult(Run(parse.GetValue(code), parse.GetValue(gallery), context, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string? code, string? gallery, CommandContext context, CancellationToken cancel)
    {
        if (gallery is not null)
        {
            if (code is not null)
            {
                throw UsageErrors.NotTogether(Name, "CODE", "--gallery");
            }

            int plates = GalleryWriter.Write(gallery, cancel);
            context.Output.Write(FormattableString.Invariant($"Written to {gallery}: README.md and {plates} pictures\n"));
            return ExitCode.Done;
        }

        context.Output.Write(code is null ? $"{ReasonManual.List()}\n{Name} CODE prints the page of one; --gallery DIR draws what they look like.\n" : PageOf(code));
        return ExitCode.Done;
    }

    private static string PageOf(string code) => ReasonManual.Names.Contains(code, StringComparer.Ordinal)
        ? ReasonManual.Of(code)
        : throw UsageErrors.UnknownReason(Name, code, ReasonManual.Names);
}
