using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings;

/// <summary>What is worth knowing of a recording as a whole, or of several of its channels, and changes no verdict.</summary>
internal static class RecordingInformation
{
    private static readonly string[] Brow = ["brow", "corrugator", "supercili", "frontal"];

    /// <summary>Events that look odd, and speech or chewing.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="survey">Its survey.</param>
    /// <param name="trials">Its trials.</param>
    public static ImmutableArray<Finding> Of(Recording recording, RecordingSurvey survey, ImmutableArray<Trial> trials) =>
        [.. new[] { Events(recording, survey, trials) }.OfType<Finding>(), .. Mouth(survey, trials)];

    private static Finding? Events(Recording recording, RecordingSurvey survey, ImmutableArray<Trial> trials)
    {
        Trial[] ordered = [.. trials.OrderBy(trial => trial.WindowFromS).ThenBy(trial => trial.Number)];
        int overlapping = 0;
        decimal furthest = decimal.MinValue;
        foreach (Trial trial in ordered)
        {
            overlapping += trial.WindowFromS < furthest ? 1 : 0;
            furthest = Math.Max(furthest, trial.WindowToS);
        }

        int outside = trials.Count(trial => trial.WindowFromS < 0 || (double)trial.WindowToS > recording.DurationS + 0.001);
        return overlapping + outside == 0 ? null : Noticed(
            ReasonCode.Events,
            [.. survey.Channels.Select(channel => channel.Name)],
            (0, recording.DurationS),
            string.Create(CultureInfo.InvariantCulture, $"of {trials.Length} trials {overlapping} overlap or repeat others, {outside} reach beyond the recording"),
            "events of another recording, a clock that is off, or events that were written twice");
    }

    private static IEnumerable<Finding> Mouth(RecordingSurvey survey, ImmutableArray<Trial> trials)
    {
        ChannelSurvey[] cheeks = [.. survey.Channels.Where(channel => channel.Channel.NotRaw is null && MouthSite.Is(channel.Channel, channel.Name, channel.Site))];
        if (cheeks.Length == 0)
        {
            yield break;
        }

        bool IsAsked(double seconds) => trials.Any(trial => trial.Role == TrialRole.Task && seconds >= (double)trial.OnsetS && seconds < (double)(trial.OnsetS + trial.DurationS));
        ChannelSurvey? brow = survey.Channels.FirstOrDefault(channel => channel.Channel.NotRaw is null && IsBrow(channel));
        Envelope? elsewhere = brow?.Time.Envelope?.ToEnvelope();
        foreach (ChannelSurvey cheek in cheeks)
        {
            if (cheek.Time.Envelope?.ToEnvelope() is { } envelope && MouthRhythm.Of(envelope, elsewhere, IsAsked) is { } rhythm)
            {
                yield return Noticed(
                    ReasonCode.MouthActivity,
                    [cheek.Name, .. survey.Channels.Where(channel => channel.IsNearEye && !IsBrow(channel) && Sees(channel, elsewhere, IsAsked)).Select(channel => channel.Name)],
                    (rhythm.Stretches[0].FromS, rhythm.Stretches[^1].ToS),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{rhythm.Bursts} bursts at {rhythm.BurstsPerS:0.0} a second in {rhythm.Stretches.Length} {(rhythm.Stretches.Length == 1 ? "stretch" : "stretches")}, as in {(rhythm.BurstsPerS < MouthRhythm.SpeechFromPerS ? "chewing" : "speech")}"),
                    "speech, chewing or swallowing: muscles of the mouth, which reach the cheek and in part the eye");
            }
        }
    }

    private static bool Sees(ChannelSurvey channel, Envelope? elsewhere, Func<double, bool> isAsked) =>
        channel.Channel.NotRaw is null && channel.Time.Envelope?.ToEnvelope() is { } envelope && MouthRhythm.Of(envelope, elsewhere, isAsked) is not null;

    private static bool IsBrow(ChannelSurvey channel)
    {
        string text = channel.Site?.Muscle ?? channel.Name + " " + channel.Channel.Label;
        return Brow.Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase));
    }

    private static Finding Noticed(string code, ImmutableArray<string> channels, (double FromS, double ToS) stretch, string text, string cause) => new()
    {
        Reason = code,
        Grade = Grade.Pass,
        Channels = channels,
        FromS = stretch.FromS,
        ToS = stretch.ToS,
        Evidence = [],
        Text = text,
        Cause = cause,
    };
}
