namespace ChannelAudit.Reports.Output;

/// <summary>Files under temporary names that a process which died has left in an audit's folder.</summary>
internal static class LeftPartials
{
    /// <summary>Takes them away; for who holds the lock of the folder, when nothing is left to be completed.</summary>
    public static void Remove(string folder)
    {
        foreach (string file in Directory.EnumerateFiles(folder, ".*" + OutputBatch.PartialSuffix))
        {
            Quietly.Delete(file);
        }
    }
}
