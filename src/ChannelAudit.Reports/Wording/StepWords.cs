using System.Collections.Immutable;
using ChannelAudit.Pilot;

namespace ChannelAudit.Reports.Wording;

/// <summary>Steps of a technician as sentences.</summary>
public static class StepWords
{
    /// <summary>Stands once below a list with a step that touches skin: the short form of <see cref="ReasonWords.Caution"/>.</summary>
    public const string ShortCaution =
        "Caution: near the eye no alcohol and no abrasive, on broken or just abraded skin neither; stop at redness, pain or on request. "
        + "Local protocol and qualified staff come first.";

    /// <summary>What a step says to do, one or two sentences.</summary>
    public static string Of(PilotStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        string where = Names(step.Sites, "the sites");
        return step.Kind switch
        {
            StepKind.Record when step.Sites.IsEmpty => "Record rest of 10 s, then each movement once for 4 s.",
            StepKind.Record => $"Record the missing movement once for 4 s, with rest of 10 s before it: {where}.",
            StepKind.Range => $"Lower the gain or widen the input range: {where}.",
            StepKind.Input => "Record the raw signal, neither rectified nor smoothed; check unit, resolution and setup file.",
            StepKind.Storage => "Check the way from the amplifier to the disk: cable, radio link, free space.",
            StepKind.Exchange => $"Exchange the leads of {where} at the amplifier, or their labels in the setup.",
            StepKind.Ground => "Check the ground: plug at the amplifier, lead, then the electrode on the forehead.",
            StepKind.Room => "Move mains leads, chargers, lamps and displays away from the participant and the leads.",
            StepKind.Still => $"Ask for a still face and record again: {where}.",
            StepKind.AskAgain => $"Show the movement, let it be tried, and record it again: {where}.",
            StepKind.Measure => $"Measure the contacts again, their readings do not fit together: {where}.",
            StepKind.Wait => $"Touch nothing and wait; measure again {(step.At is { } at ? $"at {at}" : "in 5 minutes")}: {where}.",
            StepKind.Leads => $"Check plug and lead from the amplifier on, electrodes stay on the face: {where}.",
            StepKind.Fasten => $"Fasten the leads so that they cannot pull: {where}.",
            StepKind.Settle => $"Find out whether gel joins {where}: tap the lead wires (pilot --protocol), or read across the two sites.",
            StepKind.Wipe when step.Sites.Length == 1 => $"Take off the gel between the two electrodes of {where} with a soft cloth{AwayFromTheEye(step)}; less gel, then record again.",
            StepKind.Wipe => $"Take off the gel between {where} with a soft cloth{AwayFromTheEye(step)}; less gel, then record again.",
            StepKind.Renew => $"Renew the gel and attach again, the skin stays as it is: {where}.",
            StepKind.Prepare => $"Prepare anew as the local protocol says: {where}.",
            _ => $"Leave as it is and make a note; little to win, and near the lid: {where}.",
        };
    }

    private static string AwayFromTheEye(PilotStep step) => step.IsAtEyelid ? ", eyes closed, away from the eye" : string.Empty;

    /// <summary>The word for a step in tables: <c>ask-again</c>.</summary>
    public static string Code(StepKind kind) => kind switch
    {
        StepKind.AskAgain => "ask-again",
        _ => kind.ToString().ToLowerInvariant(),
    };

    /// <summary>The step of a word, or null.</summary>
    public static StepKind? FromCode(string code) => Enum.GetValues<StepKind>().Cast<StepKind?>().FirstOrDefault(kind => string.Equals(Code(kind!.Value), code, StringComparison.Ordinal));

    /// <summary>Whether a caution belongs below a list of steps.</summary>
    public static bool NeedCaution(ImmutableArray<PilotStep> steps) => steps.Any(step => StepCost.TouchesSkin(step.Kind));

    /// <summary>Names in a sentence: <c>cheek, eye and brow</c>.</summary>
    internal static string Names(ImmutableArray<string> names, string none) => names.Length switch
    {
        0 => none,
        1 => names[0],
        _ => $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}",
    };
}
