using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Reports.Json;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Output;

/// <summary>What is still to be done while the files of a run get their names: written before the first is moved, taken away after the last.</summary>
/// <remarks>
/// A process that dies between them leaves files of two runs side by side, and this list. Every file of the new run lies finished on the disk by then, so whoever opens the
/// folder next goes on to its end, and nothing is lost. Whoever dies before the list is there has changed nothing.
/// </remarks>
public static class CommitJournal
{
    private const string Name = "commit.json";
    private const int LockTries = 600;
    private const int LockWaitMs = 100;

    /// <summary>Whether the files of a folder are just getting their names, or were when a process died.</summary>
    /// <param name="folder">The folder of an audit.</param>
    public static bool IsIn(string folder) => File.Exists(PlaceIn(folder));

    /// <summary>Goes on to the end of what a process that died has left half done; waits for one that still lives.</summary>
    /// <param name="folder">The folder of an audit.</param>
    /// <param name="cancel">Ends the wait.</param>
    /// <returns>Whether anything was left to do.</returns>
    /// <exception cref="ChannelAuditException">When another run writes there, the list is damaged, or the operating system refuses.</exception>
    public static bool Complete(string folder, CancellationToken cancel)
    {
        for (int left = LockTries; IsIn(folder); left--)
        {
            using UnfinishedRun? run = UnfinishedRun.TryOpen(folder);
            if (run is not null)
            {
                return CompleteLocked(folder);
            }

            _ = left > 0 ? cancel.WaitHandle.WaitOne(LockWaitMs) : throw OutputErrors.AnotherRun(folder);
            cancel.ThrowIfCancellationRequested();
        }

        return false;
    }

    /// <summary>The same for who holds the lock of the folder.</summary>
    internal static bool CompleteLocked(string folder)
    {
        if (!IsIn(folder))
        {
            return false;
        }

        (ImmutableArray<(string From, string To)> moves, ImmutableArray<string> stale) = Read(folder);
        for (int i = 0; i < moves.Length; i++)
        {
            if (i == moves.Length - 1)
            {
                StaleFiles.Remove(folder, stale);
            }

            Move(folder, moves[i]);
        }

        Remove(folder);
        return true;
    }

    /// <summary>Writes the list; on the disk before this returns.</summary>
    /// <param name="folder">The folder of an audit.</param>
    /// <param name="moves">Where each file lies and where it belongs, below the folder; <c>audit.json</c>, which speaks for all others, last.</param>
    /// <param name="stale">Files of an earlier run that go before the last is moved.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    internal static void Write(string folder, IEnumerable<(string From, string To)> moves, IEnumerable<string> stale)
    {
        using JsonText text = new();
        text.Writer.WriteStartObject();
        text.Rows("moves", moves, (json, move) =>
        {
            json.WriteStartObject();
            json.WriteString("from", move.From);
            json.WriteString("to", move.To);
            json.WriteEndObject();
        });
        text.Rows("stale", stale, (json, path) => json.WriteStringValue(path));
        text.Writer.WriteEndObject();
        string place = PlaceIn(folder);
        string partial = place + OutputBatch.PartialSuffix;
        try
        {
            using (FileStream stream = new(partial, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0))
            {
                stream.Write(text.ToArray());
                stream.Flush(flushToDisk: true);
            }

            File.Move(partial, place, overwrite: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite($"{UnfinishedRun.FolderName}/{Name}", exception);
        }
    }

    /// <summary>Takes the list away: everything has its name.</summary>
    internal static void Remove(string folder) => Quietly.Delete(PlaceIn(folder));

    private static string PlaceIn(string folder) => Path.Combine(folder, UnfinishedRun.FolderName, Name);

    private static void Move(string folder, (string From, string To) move)
    {
        string from = Path.Combine(folder, move.From);
        try
        {
            // One that is not there any more has been moved before the process died.
            if (File.Exists(from))
            {
                File.Move(from, Path.Combine(folder, move.To), overwrite: true);
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite(move.To, exception);
        }
    }

    private static (ImmutableArray<(string From, string To)> Moves, ImmutableArray<string> Stale) Read(string folder)
    {
        string file = $"{UnfinishedRun.FolderName}/{Name}";
        try
        {
            using JsonDocument document = StrictJson.Parse(PlainFile.ReadAllBytes(PlaceIn(folder)));
            JsonField root = new(document.RootElement, file, string.Empty);
            ImmutableArray<(string From, string To)> moves = root.List("moves", move => (move.Text("from"), move.Text("to")));
            ImmutableArray<string> stale = root.Texts("stale");
            return moves.All(move => SafePath.IsBelow(move.From) && SafePath.IsBelow(move.To)) ? (moves, stale) : throw OutputErrors.DamagedJournal(folder, file);
        }
        catch (JsonException)
        {
            throw OutputErrors.DamagedJournal(folder, file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotRead(file, exception);
        }
    }
}
