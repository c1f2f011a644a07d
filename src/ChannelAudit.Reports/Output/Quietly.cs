namespace ChannelAudit.Reports.Output;

/// <summary>Clears up: a fault on the way must not hide the fault that it follows.</summary>
internal static class Quietly
{
    /// <summary>Deletes a file; the operating system may refuse.</summary>
    public static void Delete(string path) => Do(() => File.Delete(path));

    /// <summary>Does something; the operating system may refuse.</summary>
    public static void Do(Action action)
    {
        try
        {
            action();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // What cannot be cleared away stays; it is told from results by its name.
        }
    }
}
