using ChannelAudit.Reports.Console;

namespace ChannelAudit.Cli;

/// <summary>Finds out what the terminal can show.</summary>
internal static class TerminalLook
{
    /// <summary>Colour only on a terminal without NO_COLOR; ASCII where the output is not UTF-8.</summary>
    public static TerminalStyle Of()
    {
        bool isTerminal = !Console.IsOutputRedirected;
        bool noColour = !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            || string.Equals(Environment.GetEnvironmentVariable("TERM"), "dumb", StringComparison.Ordinal);
        bool isUnicode = Console.OutputEncoding.CodePage == 65001;
        return new TerminalStyle(isTerminal && !noColour, !isUnicode, isTerminal ? WindowWidth() : TerminalStyle.WidestLine);
    }

    private static int WindowWidth()
    {
        try
        {
            return Console.WindowWidth > 0 ? Console.WindowWidth : TerminalStyle.WidestLine;
        }
        catch (IOException)
        {
            return TerminalStyle.WidestLine;
        }
    }
}
