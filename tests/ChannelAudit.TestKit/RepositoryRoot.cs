namespace ChannelAudit.TestKit;

/// <summary>Finds files of the repository from a test.</summary>
public static class RepositoryRoot
{
    /// <summary>Gives the full path of a file below <c>fixtures/</c>.</summary>
    /// <param name="relative">Path below the folder, with forward slashes.</param>
    /// <returns>The full path, whether the file exists or not.</returns>
    /// <exception cref="DirectoryNotFoundException">No folder above the tests holds the solution.</exception>
    public static string Fixture(string relative)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ChannelAudit.sln")))
            {
                return Path.Combine(folder.FullName, "fixtures", relative);
            }
        }

        throw new DirectoryNotFoundException("No folder above the tests holds ChannelAudit.sln.");
    }
}
