using System.Globalization;
using System.Text;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Console;

/// <summary>The bridge protocol as instructions for the technician.</summary>
public static class ProtocolText
{
    /// <summary>The whole text, each line ended by LF.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="setupFile">The setup file as the user gave it, for the command line that reads the recording.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Render(PilotProtocol protocol, string setupFile, TerminalStyle style)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"Bridge protocol, {protocol.DurationS} s. Start the recording, then keep to the clock.\n\n");
        text.Append("   at    for  mark as\n");
        foreach (ProtocolPart part in protocol.Parts)
        {
            text.Append(CultureInfo.InvariantCulture, $"{Quantities.Clock(part.AtS),6} {part.ForS,4} s  {TerminalText.Clean(part.Label)}\n");
            Paragraph(text, Say(part), "               ", style);
        }

        text.Append('\n');
        Paragraph(text, "Say before: you may stop at any time. Tap wires, not skin. Nothing here needs the electrodes to be touched.", string.Empty, style);
        if (!protocol.WithoutTask.IsEmpty)
        {
            Paragraph(text, $"Without a task in the setup, so not asked: {TerminalText.Clean(StepWords.Names(protocol.WithoutTask, string.Empty))}.", string.Empty, style);
        }

        text.Append(CultureInfo.InvariantCulture, $"\nThen: channelaudit pilot RECORDING --setup {TerminalText.Clean(setupFile)}\n");
        Paragraph(text, "Where the recording takes no marks, begin it at 0:00 of this clock and give the times as a table, with --events FILE:", string.Empty, style);
        text.Append("\nonset\tduration\ttrial_type\n");
        foreach (ProtocolPart part in protocol.Parts)
        {
            text.Append(CultureInfo.InvariantCulture, $"{part.AtS}\t{part.ForS}\t{TerminalText.Clean(part.Label)}\n");
        }

        return TerminalText.Plain(text.ToString(), style);
    }

    private static string Say(ProtocolPart part) => part.Kind switch
    {
        ProtocolPartKind.Rest => "\"Look ahead, relax your face, lips a little apart.\"",
        ProtocolPartKind.Task =>
            $"From {Quantities.Clock(part.AtS - part.LeadS)} show it; at {Quantities.Clock(part.AtS)}: \"Now, and hold ... and relax.\" "
            + $"Only this movement ({TerminalText.Clean(part.Site!)}).",
        _ => $"Tap each of the two lead wires of {TerminalText.Clean(part.Site!)} three times, lightly, a hand's breadth from the electrode.",
    };

    private static void Paragraph(StringBuilder text, string words, string indent, TerminalStyle style)
    {
        foreach (string line in TerminalText.Wrap(words, style.Columns - indent.Length))
        {
            text.Append(indent).Append(line).Append('\n');
        }
    }
}
