namespace ChannelAudit.Cli.Screening;

/// <summary>Work on several threads whose results come in the order of the items, so that whatever is written and said does not depend on the threads.</summary>
internal static class InOrder
{
    // Finished ones that wait for an earlier one are in memory: a few are enough to keep all threads busy.
    private const int AheadPerJob = 2;

    /// <summary>Does the work.</summary>
    /// <typeparam name="TItem">What is worked on.</typeparam>
    /// <typeparam name="TDone">What comes of it.</typeparam>
    /// <param name="items">The items.</param>
    /// <param name="jobs">Threads, 1 or more.</param>
    /// <param name="work">Called once an item, on several threads; it must end soon when the run is cancelled.</param>
    /// <returns>What came of each, as it is asked for. When one fails the fault is thrown in its turn, after the work under way has ended.</returns>
    public static IEnumerable<TDone> Run<TItem, TDone>(IReadOnlyList<TItem> items, int jobs, Func<TItem, TDone> work)
    {
        if (jobs == 1 || items.Count == 1)
        {
            return items.Select(work);
        }

        return OnThreads(items, jobs, work);
    }

    private static IEnumerable<TDone> OnThreads<TItem, TDone>(IReadOnlyList<TItem> items, int jobs, Func<TItem, TDone> work)
    {
        Queue<Task<TDone>> running = new();
        using SemaphoreSlim free = new(jobs);
        int next = 0;
        bool isOver = false;
        try
        {
            while (next < items.Count || running.Count > 0)
            {
                while (next < items.Count && running.Count < AheadPerJob * jobs)
                {
                    TItem item = items[next++];
                    running.Enqueue(Task.Run(() => Guarded(item)));
                }

                yield return running.Peek().GetAwaiter().GetResult();
                _ = running.Dequeue();
            }
        }
        finally
        {
            Volatile.Write(ref isOver, true);
            WaitForAll(running);
        }

        TDone Guarded(TItem item)
        {
            free.Wait();
            try
            {
                return Volatile.Read(ref isOver) ? throw new OperationCanceledException() : work(item);
            }
            finally
            {
                free.Release();
            }
        }
    }

    // The fault that ends a run was thrown in its turn; those of later items say nothing new.
    private static void WaitForAll(IEnumerable<Task> running)
    {
        try
        {
            Task.WaitAll([.. running]);
        }
        catch (AggregateException)
        {
            // Observed.
        }
    }
}
