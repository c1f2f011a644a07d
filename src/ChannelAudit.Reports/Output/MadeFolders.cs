namespace ChannelAudit.Reports.Output;

/// <summary>Folders that were made on the way, so that a run which comes to nothing leaves none behind.</summary>
internal sealed class MadeFolders
{
    private readonly List<string> _made = [];

    /// <summary>Makes a folder and those above it, where they are missing.</summary>
    public void Make(string path)
    {
        if (Directory.Exists(path))
        {
            return;
        }

        if (Path.GetDirectoryName(path) is { } parent)
        {
            Make(parent);
        }

        Directory.CreateDirectory(path);
        _made.Add(path);
    }

    /// <summary>Keeps them.</summary>
    public void Keep() => _made.Clear();

    /// <summary>Takes those away that are empty, deepest first.</summary>
    public void RemoveEmpty()
    {
        for (int folder = _made.Count - 1; folder >= 0; folder--)
        {
            string path = _made[folder];
            Quietly.Do(() => Directory.Delete(path, recursive: false));
        }

        _made.Clear();
    }
}
