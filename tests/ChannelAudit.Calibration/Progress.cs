namespace ChannelAudit.Calibration;

/// <summary>Counts recordings on standard error.</summary>
internal sealed class Progress
{
    private const int Often = 100;
    private int done;

    /// <summary>One recording more.</summary>
    public void Step()
    {
        int now = Interlocked.Increment(ref done);
        if (now % Often == 0)
        {
            Console.Error.WriteLine(FormattableString.Invariant($"{now} recordings"));
        }
    }
}
