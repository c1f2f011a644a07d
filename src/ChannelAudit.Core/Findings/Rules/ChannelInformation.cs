using System.Collections.Immutable;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>What is worth knowing of one channel and changes no verdict.</summary>
internal static class ChannelInformation
{
    private const double LeastChangePercent = 25;

    /// <summary>Blinks in trials, spikes that come with them, and muscle activity at rest.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="trials">What the rules said of each trial's window.</param>
    /// <param name="whole">The whole recording.</param>
    /// <param name="rules">The channel's rules.</param>
    public static ImmutableArray<Finding> Of(
        ChannelSurvey channel,
        ImmutableArray<(WindowCase Window, ImmutableArray<RuleOutcome> Outcomes)> trials,
        WindowCase whole,
        ChannelRules rules) =>
    [
        .. new[]
        {
            LidMovements(channel, trials),
            Coupling(channel, whole),
            HasToneOrMotion(trials) ? null : Tension(channel, whole, rules),
            Filters(channel, whole),
            Level(channel, whole),
        }.OfType<Finding>(),
    ];

    // Both reach into the muscle's band, and would be taken for it.
    private static bool HasToneOrMotion(ImmutableArray<(WindowCase Window, ImmutableArray<RuleOutcome> Outcomes)> trials) =>
        trials.Any(trial => trial.Outcomes.Any(outcome =>
            outcome.Grade != Grade.Pass && outcome.Reason is ReasonCode.NarrowBand or ReasonCode.LowFrequency));

    private static Finding? LidMovements(ChannelSurvey channel, ImmutableArray<(WindowCase Window, ImmutableArray<RuleOutcome> Outcomes)> trials)
    {
        WindowCase[] moved = [.. trials.Where(trial => trial.Outcomes.Any(outcome => outcome.IsLidMovement)).Select(trial => trial.Window)];
        return moved.Length == 0 ? null : Noticed(
            channel,
            ReasonCode.LowFrequency,
            (moved.Min(window => window.Reading.FromS), moved.Max(window => window.Reading.ToS)),
            FormattableString.Invariant($"brief swings below the band in {moved.Length} of {trials.Length} trials, not counted as motion"),
            "blinks or lid movements");
    }

    private static Finding? Coupling(ChannelSurvey channel, WindowCase whole) => channel.Pops.Locked == 0 ? null : Noticed(
        channel,
        ReasonCode.Pops,
        (whole.Reading.FromS, whole.Reading.ToS),
        channel.Pops.Locked == 1
            ? "one short spike within 5 ms of a trial's onset, not counted as a pop"
            : FormattableString.Invariant($"short spikes locked to the trials ({channel.Pops.Locked}), not counted as pops"),
        "a trigger or stimulator that couples into the leads");

    private static Finding? Tension(ChannelSurvey channel, WindowCase whole, ChannelRules rules) => !rules.IsTonic(whole) ? null : Noticed(
        channel,
        ReasonCode.TonicActivity,
        (whole.Reading.FromS, whole.Reading.ToS),
        $"{Say.Number(whole.ValueOf("rest_rms") ?? 0)} µV at rest, with the spectrum of a muscle",
        "the face is tense: not noise");

    // What is measured at rest cannot rise by more than two fifths: beyond that a second is no longer quiet.
    private static Finding? Level(ChannelSurvey channel, WindowCase whole)
    {
        double minutes = (whole.Reading.ToS - whole.Reading.FromS) / 60;
        return whole.ValueOf("level_trend") is not { } trend || Math.Abs(trend) * minutes < LeastChangePercent ? null : Noticed(
            channel,
            ReasonCode.RestingLevel,
            (whole.Reading.FromS, whole.Reading.ToS),
            $"the resting level {(trend < 0 ? "falls" : "rises")} by {Say.Number(Math.Abs(trend))} % a minute",
            trend < 0 ? "the face relaxes, or the contact settles" : "the face tenses, gel dries, or an electrode comes loose");
    }

    private static Finding? Filters(ChannelSurvey channel, WindowCase whole) => channel.FilterDoubts.IsEmpty ? null : Noticed(
        channel,
        ReasonCode.FilterMismatch,
        (whole.Reading.FromS, whole.Reading.ToS),
        string.Join("; ", channel.FilterDoubts),
        "the header was filled in by hand or by another program, or the amplifier was set otherwise than noted");

    private static Finding Noticed(ChannelSurvey channel, string code, (double FromS, double ToS) stretch, string text, string cause) => new()
    {
        Reason = code,
        Grade = Grade.Pass,
        Channels = [channel.Name],
        FromS = stretch.FromS,
        ToS = stretch.ToS,
        Evidence = [],
        Text = text,
        Cause = cause,
    };
}
