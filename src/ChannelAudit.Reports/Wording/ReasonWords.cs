using System.Collections.Frozen;
using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>The words for reason codes, in one place.</summary>
public static class ReasonWords
{
    /// <summary>Stands wherever advice touches skin, eyes, gel, alcohol or adhesive.</summary>
    public const string Caution =
        "Caution: no alcohol or abrasive on the eyelid or near the eye, none on broken or irritated skin; ask about allergies to "
        + "adhesive, latex and metals; stop at redness, pain or on request, and do not go on abrading to reach a number. Local protocol, "
        + "ethics approval, the equipment's instructions and qualified staff come first. ChannelAudit is not a medical device.";

    /// <summary>Every code: those that can change a verdict, then those that only inform.</summary>
    public static ImmutableArray<ReasonWord> All { get; } =
    [
        new(ReasonCode.Bridge, "joined sites", "Look for gel between the two sites; wipe it off (at the eye: closed, and away from it), let it dry, use less, then test again.", TouchesSkin: true, ["rho_active", "rho_rest", "rho_high_rest", "gain_active"]),
        new(ReasonCode.Dropout, "missing samples", "Check the way from amplifier to disk (cable, radio link, storage); what is missing cannot be repaired.", TouchesSkin: false, ["missing", "gap"]),
        new(ReasonCode.Flatline, "flat signal", "Check that lead, plug and amplifier input are connected and switched on.", TouchesSkin: false, ["flat_run", "flat"]),
        new(ReasonCode.Clipping, "clipping", "Lower the gain or widen the input range; with little headroom check ground and contact first.", TouchesSkin: true, ["clipped", "clipped_run", "peak_use"]),
        new(ReasonCode.LineNoise, "mains", "Check the ground and both leads of the site, move mains leads and chargers away; if it stays, renew the contact.", TouchesSkin: true, ["line_rms", "line_ratio", "line_left"]),
        new(ReasonCode.NarrowBand, "narrow peak", "Find what runs at this frequency (display, stimulator, fan), move it or lead the cables away from it.", TouchesSkin: false, ["narrow_rms", "narrow_ratio", "narrow_left"]),
        new(ReasonCode.LowFrequency, "motion", "Fasten the leads so that they cannot pull; re-attach an electrode that sits loose.", TouchesSkin: true, ["lowfreq_rms", "lowfreq_ratio", "lowfreq_left"]),
        new(ReasonCode.Pops, "pops", "Look for a loose plug or lead and for drying gel; re-attach if needed.", TouchesSkin: true, ["pops", "pop_rate", "pop_share"]),
        new(ReasonCode.NoiseFloor, "noise at rest", "The contact is poor: check the leads, renew the gel, or re-prepare the site.", TouchesSkin: true, ["rest_rms", "whiteness"]),
        new(ReasonCode.Drift, "baseline drift", "Wait some minutes for the contact to settle and test again; if it stays, re-attach the electrode.", TouchesSkin: true, ["drift_slope", "drift_range", "headroom"]),
        new(ReasonCode.WeakResponse, "weak response", "Show the task and repeat it; then check placement, both leads, and gel between the two electrodes.", TouchesSkin: true, ["contraction_snr", "rest_excess", "band_p95"]),
        new(ReasonCode.LeadSwap, "another site answers", "Check which lead goes to which site, and the labels in the setup file.", TouchesSkin: false, ["swap_other"]),
        new(ReasonCode.UnusableInput, "input that cannot be judged", "Record the raw signal, neither rectified nor smoothed, and check unit and resolution in the setup file.", TouchesSkin: false, []),
        new("bad-trials", "many bad trials", "See the reasons of its trials.", TouchesSkin: false, ["bad_share", "bad_share_low"]),
        new("crosstalk", "activity of a neighbouring muscle", "Nothing to do now: keep it in mind when reading these channels.", TouchesSkin: false, []),
        new("common-source", "a source shared by several sites", "Look at the ground and at what all sites have in common.", TouchesSkin: true, []),
        new("tonic-activity", "lasting muscle activity", "Ask the participant to relax the face, and give it time.", TouchesSkin: false, []),
        new("mouth-activity", "mouth activity", "Ask the participant not to speak, chew or swallow during trials.", TouchesSkin: false, []),
        new("filter-mismatch", "filters other than stated", "Compare the amplifier's filter settings with what the file states.", TouchesSkin: false, []),
        new("events", "events that look odd", "Compare the events of the recording with the protocol.", TouchesSkin: false, []),
        new("resting-level", "resting level that changes", "Look whether the gel dries or an electrode comes loose over the session.", TouchesSkin: true, ["level_trend"]),
    ];

    private static readonly FrozenDictionary<string, ReasonWord> ByCode = All.ToFrozenDictionary(word => word.Code, StringComparer.Ordinal);

    /// <summary>The words of a code; a code without words of its own is shown as it stands.</summary>
    public static ReasonWord For(string code) => ByCode.TryGetValue(code, out ReasonWord? word)
        ? word
        : new ReasonWord(code, code, "See the documentation of this code.", TouchesSkin: false, []);

    /// <summary>The name of a reason behind a verdict: sites that are certainly joined reject, so behind a questionable verdict they are suspected.</summary>
    /// <param name="code">The reason code.</param>
    /// <param name="verdict">The computed verdict that rests on it.</param>
    public static string Name(string code, Grade verdict) => string.Equals(code, ReasonCode.Bridge, StringComparison.Ordinal) && verdict == Grade.Questionable
        ? $"{For(code).Name} ({ReasonNotes.Suspected})"
        : For(code).Name;

    /// <summary>Reasons in words, each once: <c>joined sites, drift</c>.</summary>
    /// <param name="codes">The reason codes.</param>
    public static string Names(IEnumerable<string> codes) => string.Join(", ", codes.Distinct(StringComparer.Ordinal).Select(code => For(code).Name));
}
