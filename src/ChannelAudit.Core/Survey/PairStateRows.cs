using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;

namespace ChannelAudit.Survey;

/// <summary>Readings of a pair summed over its rest, and over the contractions of each channel.</summary>
/// <param name="Rest">Over segments at rest.</param>
/// <param name="ActiveA">Over contractions of the first channel.</param>
/// <param name="ActiveB">Over contractions of the second channel.</param>
public sealed record PairStateRows(PairReading? Rest, PairReading? ActiveA, PairReading? ActiveB)
{
    /// <summary>Reads all pairs of a recording in one more pass over it.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="survey">Its survey.</param>
    /// <param name="statesOf">The states of a pair's segments, or null when it cannot be compared.</param>
    /// <param name="cancellation">Checked often.</param>
    public static ImmutableArray<PairStateRows> All(
        Recording recording, RecordingSurvey survey, Func<int, PairStates?> statesOf, CancellationToken cancellation)
    {
        PairStateRows[] rows = [.. survey.Pairs.Select(_ => new PairStateRows(null, null, null))];
        foreach (GroupPass pass in GroupPass.All(recording, survey))
        {
            pass.ReadStates(statesOf, rows, cancellation);
        }

        return [.. rows];
    }
}
