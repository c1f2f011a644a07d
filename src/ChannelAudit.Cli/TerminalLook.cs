using ChannelAudit.Reports.Console;

namespace ChannelAudit.Cli;

/// <summary>Finds out what the terminal can show.</summary>
internal static class TerminalLook
{
    private const int Utf8 = 65001;

    /// <summary>What standard output can show.</summary>
    public static TerminalStyle Of() =>
        Of(!Console.IsOutputRedirected, Environment.GetEnvironmentVariable, Console.OutputEncoding.CodePage, WindowWidth);

    /// <summary>
    /// Colour only on a terminal, without NO_COLOR and unless it is a dumb one; ASCII where the output is not UTF-8; files always get the widest lines.
    /// </summary>
    /// <param name="isTerminal">Whether a person sees the output, and no file or other program gets it.</param>
    /// <param name="environment">The environment's variables.</param>
    /// <param name="codePage">That of the output.</param>
    /// <param name="width">Columns of the terminal; 0 or less when it does not say.</param>
    public static TerminalStyle Of(bool isTerminal, Func<string, string?> environment, int codePage, Func<int> width)
    {
        bool isPlain = !string.IsNullOrEmpty(environment("NO_COLOR")) || string.Equals(environment("TERM"), "dumb", StringComparison.Ordinal);
        int columns = isTerminal ? width() : 0;
        return new TerminalStyle(isTerminal && !isPlain, codePage != Utf8, columns > 0 ? columns : TerminalStyle.WidestLine);
    }

    private static int WindowWidth()
    {
        try
        {
            return Console.WindowWidth;
        }
        catch (IOException)
        {
            return 0;
        }
    }
}
