namespace ChannelAudit.Recordings;

/// <summary>Items of a list that several threads work on, each on the next one as it gets free.</summary>
/// <param name="count">How many items.</param>
/// <param name="prepare">Given a reader, work on the item of a number; made once a thread, when it gets its first item.</param>
internal sealed class SharedItems(int count, Func<Recording, Action<int>> prepare)
{
    private int last = -1;

    /// <summary>Works on items until none is left.</summary>
    /// <param name="recording">This thread's reader.</param>
    public void Work(Recording recording)
    {
        Action<int>? work = null;
        for (int item = Interlocked.Increment(ref last); item < count; item = Interlocked.Increment(ref last))
        {
            work ??= prepare(recording);
            work(item);
        }
    }
}
