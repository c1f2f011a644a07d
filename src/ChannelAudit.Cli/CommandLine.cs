using System.CommandLine;
using ChannelAudit.Cli.Commands;

namespace ChannelAudit.Cli;

/// <summary>Runs one command line, from its words to its exit code.</summary>
internal static class CommandLine
{
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
            ErrorReport.WriteInterrupted(context.Error);
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

        // Files named "@..." are files, not lists of further words; "-ab" is not "-a -b".
        ParseResult parse = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
        if (parse.GetValue<bool>(RootCommandFactory.Verbose))
        {
            context.LogEverything();
        }

        if (parse.Action is not (HelpWithExample or ShowVersion))
        {
            UsageCheck.Refuse(parse);
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
