using ChannelAudit.Reports.Console;

namespace ChannelAudit.Cli.Screening;

/// <summary>One line on a terminal that says how far a run has come; nothing where standard error is no terminal.</summary>
/// <param name="error">Standard error.</param>
/// <param name="isTerminal">Whether a person sees it.</param>
/// <param name="columns">Its width.</param>
/// <param name="total">Recordings in all.</param>
/// <param name="clock">Tells the time.</param>
internal sealed class Progress(TextWriter error, bool isTerminal, int columns, int total, TimeProvider clock)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    private readonly bool isSeen = isTerminal && total > 1;
    private readonly int width = Math.Max(20, columns - 1);
    private readonly long start = clock.GetTimestamp();
    private readonly Lock gate = new();
    private long lastShown;
    private bool isShown;
    private int done;
    private int takenOver;

    /// <summary>Recordings that an earlier run had audited.</summary>
    public int TakenOver
    {
        get
        {
            lock (gate)
            {
                return takenOver;
            }
        }
    }

    /// <summary>Says which recording is worked on. Any thread.</summary>
    public void Starts(string name)
    {
        lock (gate)
        {
            long now = clock.GetTimestamp();
            if (!isSeen || (isShown && clock.GetElapsedTime(lastShown, now) < Pause))
            {
                return;
            }

            error.Write("\r" + ProgressText.Of(done, total, Left(now), name, width));
            error.Flush();
            (lastShown, isShown) = (now, true);
        }
    }

    /// <summary>Counts a recording.</summary>
    /// <param name="wasTakenOver">Whether an earlier run had audited it: it says nothing about the time left.</param>
    public void Ends(bool wasTakenOver)
    {
        lock (gate)
        {
            done++;
            takenOver += wasTakenOver ? 1 : 0;
        }
    }

    /// <summary>Takes the line away, before anything else is written to the terminal.</summary>
    public void Clear()
    {
        lock (gate)
        {
            if (isShown)
            {
                error.Write("\r" + new string(' ', width) + "\r");
                error.Flush();
                isShown = false;
            }
        }
    }

    private TimeSpan? Left(long now)
    {
        int audited = done - takenOver;
        return audited == 0 ? null : clock.GetElapsedTime(start, now) / audited * (total - done);
    }
}
