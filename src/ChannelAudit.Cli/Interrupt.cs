using System.Runtime.InteropServices;

namespace ChannelAudit.Cli;

/// <summary>Turns the first Ctrl-C, or the first request to end, into a cancellation; the second one ends the process.</summary>
internal sealed class Interrupt : IDisposable
{
    private readonly CancellationTokenSource _source = new();
    private readonly PosixSignalRegistration _interrupt;
    private readonly PosixSignalRegistration _terminate;

    /// <summary>Starts to listen.</summary>
    public Interrupt()
    {
        _interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Handle);
        _terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Handle);
    }

    /// <summary>Cancelled by the signal.</summary>
    public CancellationToken Token => _source.Token;

    /// <inheritdoc/>
    public void Dispose()
    {
        _interrupt.Dispose();
        _terminate.Dispose();
        _source.Dispose();
    }

    private void Handle(PosixSignalContext signal)
    {
        if (!_source.IsCancellationRequested)
        {
            signal.Cancel = true;
            _source.Cancel();
        }
    }
}
