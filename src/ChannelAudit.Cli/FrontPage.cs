namespace ChannelAudit.Cli;

/// <summary>The help of the program itself, kept as text: who asks what there is need not wait for all commands to be put together.</summary>
/// <remarks>A test holds the text to what the commands say; <c>CHANNELAUDIT_GOLDEN=rewrite</c> writes it anew.</remarks>
internal static class FrontPage
{
    private const string Resource = "front-page";

    /// <summary>Whether nothing else is asked for.</summary>
    public static bool IsAskedBy(string[] arguments) => arguments is ["--help"] or ["-h"];

    /// <summary>Writes it to standard output, as bytes: it is ASCII on every terminal.</summary>
    public static int Write()
    {
        using Stream page = typeof(FrontPage).Assembly.GetManifestResourceStream(Resource)!;
        using Stream output = Console.OpenStandardOutput();
        page.CopyTo(output);
        return ExitCode.Done;
    }

    /// <summary>The text.</summary>
    public static string Text()
    {
        using StreamReader page = new(typeof(FrontPage).Assembly.GetManifestResourceStream(Resource)!);
        return page.ReadToEnd();
    }
}
