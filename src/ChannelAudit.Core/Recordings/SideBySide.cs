namespace ChannelAudit.Recordings;

/// <summary>Two pieces of work on a recording at the same time where it has a second reader, else one after the other.</summary>
/// <remarks>Neither may look at what the other makes, so that nothing depends on the threads.</remarks>
internal static class SideBySide
{
    /// <summary>Does both.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="here">Work on this thread.</param>
    /// <param name="there">Work on another, with a reader of its own. A fault of it is thrown after the other work has ended, unless that has a fault too.</param>
    public static void Run(Recording recording, Action<Recording> here, Action<Recording> there)
    {
        if (recording.Beside is not { } beside)
        {
            here(recording);
            there(recording);
            return;
        }

        Task other = Task.Run(() => there(beside));
        try
        {
            here(recording);
        }
        finally
        {
            // Nobody may close the file under it.
            _ = Task.WhenAny(other).GetAwaiter().GetResult();
        }

        other.GetAwaiter().GetResult();
    }

    /// <summary>Works on items of a list, each thread on the next one as it gets free.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="count">How many items.</param>
    /// <param name="prepare">Given a reader, work on the item of a number; made once a thread.</param>
    public static void Each(Recording recording, int count, Func<Recording, Action<int>> prepare)
    {
        SharedItems items = new(count, prepare);
        Run(recording, items.Work, items.Work);
    }
}
