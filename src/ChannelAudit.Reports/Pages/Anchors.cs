using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>The places on the page of a recording that links lead to; never made of a label, so that a label can break none.</summary>
internal static class Anchors
{
    /// <summary>The part about a channel.</summary>
    /// <param name="channel">The channel's place, from 0 in file order.</param>
    public static string Channel(int channel) => $"channel-{(channel + 1).Plain()}";

    /// <summary>A reason of a channel with all its evidence.</summary>
    public static string Reason(int channel, string reason) => $"{Channel(channel)}-{Safe(reason)}";

    /// <summary>The evidence of a channel during a trial, for its worst reason.</summary>
    public static string Cell(int channel, int trial) => $"{Channel(channel)}-trial-{trial.Plain()}";

    /// <summary>The evidence of a channel during a trial, for another of its reasons.</summary>
    public static string Cell(int channel, int trial, string reason) => $"{Cell(channel, trial)}-{Safe(reason)}";

    /// <summary>What could not be judged of a channel.</summary>
    public static string Gaps(int channel) => $"{Channel(channel)}-not-assessed";

    // Codes are words of ours; a result that somebody changed by hand must not break the page either.
    private static string Safe(string code) =>
        string.Concat(code.Select(character => char.IsAsciiLetterOrDigit(character) || character == '-' ? character : '_'));
}
