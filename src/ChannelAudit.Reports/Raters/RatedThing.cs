using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Raters;

/// <summary>A trial or channel that people have labelled.</summary>
/// <param name="Recording">The recording's id.</param>
/// <param name="Channel">The channel's name.</param>
/// <param name="Trial">The trial's number; null for a whole channel.</param>
/// <param name="Computed">The computed verdict: decisions of persons are no measure of the criteria.</param>
/// <param name="Labels">A label a rater, in the raters' order; null where one gave none.</param>
/// <param name="Measures">Its measures.</param>
internal sealed record RatedThing(
    string Recording, string Channel, int? Trial, Grade Computed, ImmutableArray<Grade?> Labels, ImmutableArray<GradedMeasure> Measures)
{
    /// <summary>What people say of it together: the middle of their labels; null when two labels share the middle and differ.</summary>
    public Grade? People
    {
        get
        {
            Grade[] sorted = [.. Labels.OfType<Grade>().Order()];
            return sorted.Length > 0 && sorted[(sorted.Length - 1) / 2] == sorted[sorted.Length / 2] ? sorted[sorted.Length / 2] : null;
        }
    }
}
