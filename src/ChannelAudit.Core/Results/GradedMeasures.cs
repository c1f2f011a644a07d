using System.Collections.Immutable;

namespace ChannelAudit.Results;

/// <summary>Looks into the measures of a channel or a trial.</summary>
public static class GradedMeasures
{
    /// <summary>The value of a measure in its own unit; null when it is not among them or has no value.</summary>
    /// <param name="measures">The measures.</param>
    /// <param name="name">The measure as tables name it, <c>emg_rms</c> for instance.</param>
    public static double? ValueOf(this ImmutableArray<GradedMeasure> measures, string name)
    {
        foreach (GradedMeasure measure in measures)
        {
            if (string.Equals(measure.Value.Measure, name, StringComparison.Ordinal))
            {
                return measure.Value.Value;
            }
        }

        return null;
    }
}
