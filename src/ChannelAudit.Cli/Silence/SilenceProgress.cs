using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Cli.Silence;

/// <summary>One line on a terminal that says how many audits are done; nothing where standard error is no terminal.</summary>
/// <param name="error">Standard error.</param>
/// <param name="isTerminal">Whether a person sees it.</param>
/// <param name="clock">Tells the time.</param>
internal sealed class SilenceProgress(TextWriter error, bool isTerminal, TimeProvider clock) : IProgress<(int Done, int All)>
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    private readonly long start = clock.GetTimestamp();
    private readonly Lock gate = new();
    private long lastShown;
    private int width;

    /// <inheritdoc/>
    public void Report((int Done, int All) value)
    {
        lock (gate)
        {
            long now = clock.GetTimestamp();
            if (!isTerminal || (width > 0 && clock.GetElapsedTime(lastShown, now) < Pause))
            {
                return;
            }

            string left = value.Done == 0
                ? string.Empty
                : $", {Quantities.Clock((clock.GetElapsedTime(start, now) / value.Done * (value.All - value.Done)).TotalSeconds)} left";
            string line = $"{value.Done.Plain()} of {value.All.Plain()} audits{left}";
            error.Write("\r" + line.PadRight(width));
            error.Flush();
            (lastShown, width) = (now, Math.Max(width, line.Length));
        }
    }

    /// <summary>Takes the line away, before anything else is written to the terminal.</summary>
    public void Clear()
    {
        lock (gate)
        {
            if (width > 0)
            {
                error.Write("\r" + new string(' ', width) + "\r");
                error.Flush();
                width = 0;
            }
        }
    }
}
