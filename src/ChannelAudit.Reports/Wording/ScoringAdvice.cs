using System.Collections.Frozen;
using ChannelAudit.Findings;

namespace ChannelAudit.Reports.Wording;

/// <summary>What an analyst does about a reason once the recording is made: one line a code.</summary>
public static class ScoringAdvice
{
    private static readonly FrozenDictionary<string, string> ByCode = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        [ReasonCode.Bridge] = "Leave out the trials that are rejected at both sites; of suspected pairs do not read one site's response as independent of the other's.",
        [ReasonCode.Dropout] = "Score only windows without a gap; never join the samples on its two sides.",
        [ReasonCode.Flatline] = "Leave the flat stretches out; zero is no amplitude.",
        [ReasonCode.Clipping] = "Leave rejected trials out; the amplitude of questionable ones is too small by at least what the finding says. A filter does not bring peaks back.",
        [ReasonCode.LineNoise] = "A notch takes mains out together with the muscle around it: use it for all channels and conditions alike, and look at what is left.",
        [ReasonCode.NarrowBand] = "Find out whether it follows the stimuli; if it does, conditions differ by it. A narrow notch may help, for all conditions alike.",
        [ReasonCode.LowFrequency] = "Use the high-pass of your protocol (20 Hz is usual) and see what the finding says is left; strong motion reaches above it.",
        [ReasonCode.Pops] = "Leave out trials in which spikes hold much of the energy; a mean of rectified samples hides them.",
        [ReasonCode.NoiseFloor] = "Small responses drown: leave rejected trials out, and compare amplitudes across channels only with the noise beside them.",
        [ReasonCode.Drift] = "Behind a high-pass of 20 Hz slow drift does no harm; look whether the signal came near a rail.",
        [ReasonCode.WeakResponse] = "Score the channel only where a task shows that its muscle is recorded; say how many were left out for it.",
        [ReasonCode.LeadSwap] = "Find out which lead lay where before you rename anything, and write it down; until then score neither of the two.",
        [ReasonCode.UnusableInput] = "Get the raw recording; of this one only say what does not need the spectrum.",
        ["bad-trials"] = "See whether enough trials are left in each condition, and whether all conditions lost alike.",
        [ReasonCode.Crosstalk] = "Do not read activity at one of the two sites as its own muscle's while the other is active.",
        [ReasonCode.CommonSource] = "What all sites share is not local: look at differences between sites with care, and at what happened at these times.",
        [ReasonCode.TonicActivity] = "Responses are changes from a high level: take the baseline from just before each trial.",
        [ReasonCode.MouthActivity] = "Leave out trials in these stretches where speech or chewing was not the task.",
        [ReasonCode.FilterMismatch] = "Filter all recordings to the same band before you compare them, by what the spectra show.",
        [ReasonCode.Events] = "Hold the events against the protocol before scoring: a shifted clock scores the wrong seconds.",
        [ReasonCode.RestingLevel] = "Compare early and late trials with a baseline of their own, or take the order of trials into the model.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The advice for a code; null where there is none.</summary>
    public static string? For(string code) => ByCode.GetValueOrDefault(code);
}
