using ChannelAudit.Cli.Logging;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Reports.Console;
using Serilog;
using Serilog.Core;
using Serilog.Events;

namespace ChannelAudit.Cli.Commands;

/// <summary>What commands share: where they write, and what does the work.</summary>
internal sealed class CommandContext : IDisposable
{
    private readonly LoggingLevelSwitch _level = new(LogEventLevel.Warning);
    private readonly Logger _log;

    /// <summary>Makes the context of one run.</summary>
    /// <param name="output">For results.</param>
    /// <param name="error">For faults, the log and progress.</param>
    /// <param name="engine">Audits and writes; without one there is no <c>screen</c>.</param>
    public CommandContext(TextWriter output, TextWriter error, IScreenEngine? engine)
    {
        Output = output;
        Error = error;
        Engine = engine;
        _log = new LoggerConfiguration().MinimumLevel.ControlledBy(_level).WriteTo.Sink(new ErrorWriterSink(error)).CreateLogger();
    }

    /// <summary>For results.</summary>
    public TextWriter Output { get; }

    /// <summary>For faults, the log and progress.</summary>
    public TextWriter Error { get; }

    /// <summary>Audits and writes.</summary>
    public IScreenEngine? Engine { get; }

    /// <summary>What the terminal can show.</summary>
    public TerminalStyle Style { get; init; } = new();

    /// <summary>Whether a person sees the output, and no file or other program gets it.</summary>
    public bool IsTerminal { get; init; }

    /// <summary>Says when something is decided or frozen; nothing else may depend on the time.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>The log: warnings and worse, and with <c>--verbose</c> everything.</summary>
    public ILogger Log => _log;

    /// <summary>The width of the terminal that standard error is; 0 when it is none.</summary>
    public int ProgressColumns { get; init; }

    /// <summary>Logs everything from now on.</summary>
    public void LogEverything() => _level.MinimumLevel = LogEventLevel.Verbose;

    /// <inheritdoc/>
    public void Dispose() => _log.Dispose();
}
