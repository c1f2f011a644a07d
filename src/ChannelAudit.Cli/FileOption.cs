namespace ChannelAudit.Cli;

/// <summary>The option that names a file or folder to write, for hints about it.</summary>
/// <param name="Name">The option.</param>
/// <param name="Prints">Whether <c>-</c> prints the text instead.</param>
internal readonly record struct FileOption(string Name, bool Prints)
{
    /// <summary><c>--out</c> of commands whose one file can be printed instead.</summary>
    public static FileOption Out { get; } = new("--out", true);

    /// <summary><c>--out</c> of commands that write a folder.</summary>
    public static FileOption OutFolder { get; } = new("--out", false);

    /// <summary><c>--to</c>.</summary>
    public static FileOption To { get; } = new("--to", false);
}
