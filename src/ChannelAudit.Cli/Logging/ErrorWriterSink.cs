using System.Globalization;
using ChannelAudit.Text;
using Serilog.Core;
using Serilog.Events;
using Serilog.Formatting.Display;

namespace ChannelAudit.Cli.Logging;

/// <summary>Writes log events as lines like <c>warning: text</c>, without times, so that the same run says the same, and without what a terminal would obey.</summary>
/// <param name="error">Standard error, or what stands for it.</param>
internal sealed class ErrorWriterSink(TextWriter error) : ILogEventSink
{
    // "lj": text without quotes.
    private static readonly MessageTemplateTextFormatter Message = new("{Message:lj}", CultureInfo.InvariantCulture);

    private readonly Lock _lock = new();

    /// <inheritdoc/>
    public void Emit(LogEvent logEvent)
    {
        string level = logEvent.Level.ToString().ToLowerInvariant();
        using var message = new StringWriter(CultureInfo.InvariantCulture);
        Message.Format(logEvent, message);
        string trace = logEvent.Exception is null ? string.Empty : Lines(logEvent.Exception.ToString());
        lock (_lock)
        {
            error.Write($"{level}: {OneLine.Whole(message.ToString())}\n{trace}");
        }
    }

    // A message in it may go over lines: none may look like one of ours.
    private static string Lines(string text) => string.Concat(
        text.ReplaceLineEndings("\n").Split('\n').Select((line, place) => $"{(place == 0 || line.StartsWith(' ') ? string.Empty : "   ")}{OneLine.Whole(line)}\n"));
}
