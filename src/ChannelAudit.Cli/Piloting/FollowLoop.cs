namespace ChannelAudit.Cli.Piloting;

/// <summary>Looks at a recording again and again while it is being written, and stops when it no longer grows.</summary>
/// <remarks>
/// Each look is followed by a pause at least nine times as long as the work took, so that following costs at most a tenth of one core however long the recording
/// gets; nothing runs in the pauses. A file that has not grown costs no look at all.
/// </remarks>
internal sealed class FollowLoop
{
    private const double PauseTimesWork = 9;
    private static readonly TimeSpan ShortestPause = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan QuietUntilEnd = TimeSpan.FromSeconds(10);

    private readonly string _file;
    private readonly Func<bool, string> _look;
    private readonly Action<string> _show;
    private readonly Action<ChannelAuditException> _notYet;
    private readonly Action _awaited;
    private readonly TimeProvider _clock;

    /// <summary>Prepares to follow.</summary>
    /// <param name="file">The recording.</param>
    /// <param name="look">Audits it as it is now, told whether it is still growing; its text is shown.</param>
    /// <param name="show">Shows a new text in place of the one before.</param>
    /// <param name="notYet">Told when the file cannot be read yet: a header half written, no whole record.</param>
    /// <param name="awaited">Told while the file is not there.</param>
    /// <param name="clock">For pauses.</param>
    public FollowLoop(
        string file, Func<bool, string> look, Action<string> show, Action<ChannelAuditException> notYet, Action awaited, TimeProvider clock)
    {
        _file = file;
        _look = look;
        _show = show;
        _notYet = notYet;
        _awaited = awaited;
        _clock = clock;
    }

    /// <summary>Follows until the file has stopped growing for ten seconds; one that is not there yet is waited for without end.</summary>
    /// <param name="cancel">Ends it at once.</param>
    /// <exception cref="ChannelAuditException">When the file has stopped growing and still cannot be read.</exception>
    /// <exception cref="OperationCanceledException">When it was cancelled.</exception>
    public async Task RunAsync(CancellationToken cancel)
    {
        long seen = -1;
        TimeSpan pause = ShortestPause;
        TimeSpan quiet = TimeSpan.Zero;
        ChannelAuditException? fault = null;
        while (quiet < QuietUntilEnd)
        {
            if (Length() is not { } length)
            {
                _awaited();
                (seen, quiet, pause) = (-1, TimeSpan.Zero, ShortestPause);
            }
            else if (length != seen)
            {
                (seen, quiet) = (length, TimeSpan.Zero);
                long from = _clock.GetTimestamp();
                fault = Look(isGrowing: true);
                TimeSpan wanted = _clock.GetElapsedTime(from) * PauseTimesWork;
                pause = wanted > ShortestPause ? wanted : ShortestPause;
            }
            else
            {
                // Counted only when it is over and nothing has come: the pause after a long look is longer than the quiet that ends it all.
                quiet += pause;
                pause = ShortestPause;
            }

            if (quiet < QuietUntilEnd)
            {
                await Task.Delay(pause, _clock, cancel);
            }
        }

        // What is not there now will not come any more.
        if ((fault ?? Look(isGrowing: false)) is { } last)
        {
            throw last;
        }
    }

    // Null while it is not there: before the recording begins, or when it was taken away.
    private long? Length()
    {
        FileInfo file = new(_file);
        return file.Exists ? file.Length : null;
    }

    private ChannelAuditException? Look(bool isGrowing)
    {
        try
        {
            _show(_look(isGrowing));
            return null;
        }
        catch (ChannelAuditException fault) when (fault.Kind == FaultKind.Recording)
        {
            _notYet(fault);
            return fault;
        }
    }
}
