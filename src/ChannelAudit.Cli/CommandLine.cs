using System.CommandLine;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Completion;

namespace ChannelAudit.Cli;

/// <summary>Runs one command line, from its words to its exit code.</summary>
internal static class CommandLine
{
    /// <summary>How words are taken: files named "@..." are files, not lists of further words; "-ab" is not "-a -b".</summary>
    public static ParserConfiguration Parsing { get; } = new() { ResponseFileTokenReplacer = null, EnablePosixBundling = false };

    /// <summary>Runs it; faults end as lines on the error writer, never as an exception.</summary>
    /// <param name="arguments">The words behind the program's name.</param>
    /// <param name="context">Where to write, and what does the work.</param>
    /// <param name="cancel">Ends the run with code 130.</param>
    public static async Task<int> RunAsync(string[] arguments, CommandContext context, CancellationToken cancel)
    {
        try
        {
            return await RunUnguardedAsync(arguments, context, cancel);
        }
        catch (ChannelAuditException fault)
        {
            ErrorReport.Write(context.Error, fault);
            context.Log.Debug(fault, "where the fault was found");
            return ExitCode.Of(fault.Kind);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            ErrorReport.WriteInterrupted(context.Error, Array.Find(arguments, word => !word.StartsWith('-')) ?? string.Empty);
            return ExitCode.Interrupted;
        }
        catch (Exception fault) when (fault is not (StackOverflowException or AccessViolationException))
        {
            ErrorReport.WriteBug(context.Error, fault);
            context.Log.Debug(fault, "where the bug showed");
            return ExitCode.Bug;
        }
    }

    private static async Task<int> RunUnguardedAsync(string[] arguments, CommandContext context, CancellationToken cancel)
    {
        Command root = RootCommandFactory.Create(context);
        if (Suggestions.AreAskedBy(arguments))
        {
            return Suggestions.Write(root, arguments, context.Output);
        }

        ParseResult parse = root.Parse(arguments, Parsing);
        if (parse.Action is not (HelpWithExample or ShowVersion))
        {
            UsageCheck.Refuse(parse, arguments);
        }

        if (parse.GetValue<bool>(RootCommandFactory.Verbose))
        {
            context.LogEverything();
        }

        if (parse.Action is not (HelpWithExample or ShowVersion))
        {
            HalfDoneFolders.Complete(parse, context, cancel);
        }

        return await parse.InvokeAsync(
            new InvocationConfiguration
            {
                Output = context.Output,
                Error = context.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            },
            cancel);
    }
}
