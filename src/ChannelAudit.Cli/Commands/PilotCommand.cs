using System.CommandLine;
using ChannelAudit.Cli.Piloting;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Console;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>pilot</c>: can we start, and if not, what to do first.</summary>
internal static class PilotCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the technician while the participant sits there: record rest and each movement once, save, and
            ask. You get one answer (start, in doubt, not yet), at most five things to do with the least redo
            first, a line for each site, and a picture to be read from two metres. Advice defers to local
            protocol and qualified staff; nothing here is a medical device.
            """,
        Notes =
            """
            Exit codes: 0 done, whatever the answer; 2 wrong usage, setup, readings or events; 3 the recording
            could not be read; 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit pilot test.edf --setup setup.toml", "can we start?"),
            new("channelaudit pilot test.edf --setup setup.toml --impedance readings.tsv --out P07", "with the meter's readings; again after a redo, it says what has changed"),
            new("channelaudit pilot --protocol --setup setup.toml", "what to record in under a minute to settle whether gel joins two sites"),
            new("channelaudit pilot test.edf --setup setup.toml --follow", "while it is still being recorded"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var options = new PilotOptions();
        var command = new Command("pilot", "Says from a short recording whether a session can start, and what to do first if not.")
        {
            options.Recording, options.Setup, options.Impedance, options.Events, options.Criteria, options.Out, options.NoPicture,
            options.Follow, options.Protocol, options.StartBecause,
        };
        command.SetAction((parse, cancel) => RunAsync(options, parse, context, cancel));
        help.Add(command, Help);
        return command;
    }

    private static async Task<int> RunAsync(PilotOptions options, ParseResult parse, CommandContext context, CancellationToken cancel)
    {
        if (parse.GetValue(options.Protocol))
        {
            return PrintProtocol(options, parse, context);
        }

        PilotRequest request = options.Request(parse);
        var runner = new PilotRunner(request, context.Style);
        if (!request.Follow)
        {
            await context.Output.WriteAsync(runner.Once(isGrowing: false, cancel));
            return ExitCode.Done;
        }

        await context.Error.WriteLineAsync($"following {request.RecordingFile}: until it has not grown for 10 s, or Ctrl-C");
        var screen = new SameScreen(context.Output, context.IsTerminal);
        await new FollowLoop(
            request.RecordingFile,
            isGrowing => runner.Once(isGrowing, cancel),
            screen.Show,
            fault => screen.Show($"not yet: {fault.Message}\n"),
            () => screen.Show($"waiting for {OneLine.Of(request.RecordingFile)}, which is not there yet: start the recording, or end with Ctrl-C\n"),
            TimeProvider.System).RunAsync(cancel);
        return ExitCode.Done;
    }

    private static int PrintProtocol(PilotOptions options, ParseResult parse, CommandContext context)
    {
        if (parse.GetValue(options.Recording) is not null)
        {
            throw UsageErrors.NotTogether("channelaudit pilot", options.Protocol.Name, options.Recording.Name);
        }

        string setup = parse.GetValue(options.Setup) ?? throw UsageErrors.ProtocolNeedsSetup();
        context.Output.Write(ProtocolText.Render(PilotProtocol.Of(SetupFile.Read(setup)), setup, context.Style));
        return ExitCode.Done;
    }
}
