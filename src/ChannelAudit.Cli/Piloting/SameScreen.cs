namespace ChannelAudit.Cli.Piloting;

/// <summary>Shows one text after the other in the same place of a terminal; without a terminal each that differs follows the one before.</summary>
/// <param name="output">Where to.</param>
/// <param name="isTerminal">Whether a person sees it.</param>
internal sealed class SameScreen(TextWriter output, bool isTerminal)
{
    // To the top left corner, and everything below it away: the usual control sequences (ECMA-48).
    private const string Clear = "\u001b[H\u001b[J";

    private string? _last;

    /// <summary>Shows a text.</summary>
    public void Show(string text)
    {
        if (string.Equals(text, _last, StringComparison.Ordinal))
        {
            return;
        }

        output.Write((isTerminal ? Clear : _last is null ? string.Empty : "\n") + text);
        output.Flush();
        _last = text;
    }
}
