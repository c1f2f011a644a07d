using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Wording;

/// <summary>A question that could not be answered for a channel, and where: never shown as good.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Reason">The reason code that could not be judged.</param>
/// <param name="Cause">Why.</param>
/// <param name="WholeRecording">Whether it could not be answered for the recording as a whole.</param>
/// <param name="Trials">The trials for which it could not be answered, ascending.</param>
public sealed record GapGroup(ChannelResult Channel, string Reason, string Cause, bool WholeRecording, ImmutableArray<int> Trials)
{
    /// <summary>The gaps of a channel: those of the whole recording first, in their order, then those of trials in order of appearance.</summary>
    public static ImmutableArray<GapGroup> Of(ChannelResult channel)
    {
        NotAssessed[] questions = [.. channel.NotAssessed.Concat(channel.Cells.SelectMany(cell => cell.NotAssessed)).Distinct()];
        return
        [
            .. questions.Select(question => new GapGroup(
                channel,
                question.Reason,
                question.Cause,
                channel.NotAssessed.Contains(question),
                [.. channel.Cells.Where(cell => cell.NotAssessed.Contains(question)).Select(cell => cell.Trial)])),
        ];
    }

    /// <summary>Where, in words: <c>whole recording</c>, <c>all 12 trials</c>, <c>trials 3 to 5</c>.</summary>
    public string Where()
    {
        string trials = Trials.Length switch
        {
            0 => string.Empty,
            1 => $"trial {Trials[0].Plain()}",
            _ when Trials.Length == Channel.Cells.Length => $"all {Quantities.Many(Trials.Length, "trial")}",
            _ => $"trials {TrialList.Of(Trials)}",
        };
        return (WholeRecording, trials.Length > 0) switch
        {
            (true, true) => $"whole recording; {trials}",
            (true, false) => "whole recording",
            _ => trials,
        };
    }
}
