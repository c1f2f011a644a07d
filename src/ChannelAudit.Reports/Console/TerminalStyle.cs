namespace ChannelAudit.Reports.Console;

/// <summary>What the terminal can show; the caller finds out, this project never touches the terminal.</summary>
/// <param name="Colour">Whether verdicts are coloured, beside their word and shape.</param>
/// <param name="Ascii">Whether only ASCII is written: shapes become letters, µ becomes u.</param>
/// <param name="Width">Columns of a line, 40 to 100.</param>
public sealed record TerminalStyle(bool Colour = false, bool Ascii = false, int Width = TerminalStyle.WidestLine)
{
    /// <summary>The widest line that is written, in columns.</summary>
    public const int WidestLine = 100;

    /// <summary>The narrowest width that lines are wrapped to.</summary>
    public const int NarrowestLine = 40;

    /// <summary>The width within its bounds.</summary>
    public int Columns => Math.Clamp(Width, NarrowestLine, WidestLine);
}
