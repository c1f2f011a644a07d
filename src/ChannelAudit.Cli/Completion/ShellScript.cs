namespace ChannelAudit.Cli.Completion;

/// <summary>The scripts that tell a shell to ask this program what can stand at the cursor.</summary>
internal static class ShellScript
{
    private static readonly string[] Endings = ["bash", "zsh", "fish", "ps1"];

    /// <summary>The shells there is a script for.</summary>
    public static string[] Shells { get; } = ["bash", "zsh", "fish", "pwsh"];

    /// <summary>The script of a shell, or null when there is none.</summary>
    /// <param name="shell">One of <see cref="Shells"/>.</param>
    public static string? For(string shell)
    {
        int at = Array.IndexOf(Shells, shell);
        if (at < 0)
        {
            return null;
        }

        using Stream stream = typeof(ShellScript).Assembly.GetManifestResourceStream($"completion.{Endings[at]}")
            ?? throw new InvalidOperationException($"The script for {shell} is not in the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
