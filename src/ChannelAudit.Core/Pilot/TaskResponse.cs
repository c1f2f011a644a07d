namespace ChannelAudit.Pilot;

/// <summary>How a site answered the voluntary contraction that is asked of its muscle.</summary>
/// <param name="Task">The task's label.</param>
/// <param name="Times">How often the recording asks for it.</param>
/// <param name="Decibels">How far the site stands out from its rest, median over the times, in dB; null when that is not known.</param>
/// <param name="ContractionUv">Its amplitude in the contraction, median over the times, in µV rms within the band; null when not known.</param>
/// <param name="Strongest">The other site that answers this task most; null when there is none to compare with.</param>
/// <param name="StrongestDecibels">How far that one stands out from its own rest, in dB.</param>
/// <param name="WhyNot">Why there is no answer; null when there is one.</param>
public sealed record TaskResponse(
    string Task, int Times, double? Decibels, double? ContractionUv, string? Strongest, double? StrongestDecibels, string? WhyNot)
{
    /// <summary>Whether the site answers its own task more than any other site does; null when that is not known.</summary>
    public bool? AnswersMost => Decibels is not { } own ? null : StrongestDecibels is not { } other || own > other;
}
