using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Places runs of records on the sample grid of one signal.</summary>
internal static class StretchBuilder
{
    /// <summary>The unbroken stretches of a signal.</summary>
    /// <param name="runs">The runs in order; the first starts at 0.</param>
    /// <param name="samplesPerRecord">Samples of the signal in a record.</param>
    /// <param name="rate">The signal's rate.</param>
    /// <remarks>A run that starts within half a sample of where the stretch before it ends belongs to that stretch; so does one that starts
    /// earlier (the clock's jitter, reported and limited by <see cref="RecordClock"/>). Any other starts at round(time x rate).</remarks>
    public static ImmutableArray<Stretch> Build(ImmutableArray<RecordRun> runs, int samplesPerRecord, Rational rate)
    {
        List<Stretch> stretches = [];
        decimal anchorS = 0;
        long stored = 0;
        foreach (RecordRun run in runs)
        {
            long length = run.Records * samplesPerRecord;
            if (stretches.Count > 0 && Joins(stretches[^1], run, anchorS, rate))
            {
                stretches[^1] = stretches[^1] with { Length = stretches[^1].Length + length };
            }
            else
            {
                anchorS = run.StartS;
                stretches.Add(new Stretch(rate.IndexAt(run.StartS), length, stored));
            }

            stored += length;
        }

        return [.. stretches];
    }

    private static bool Joins(Stretch last, RecordRun run, decimal anchorS, Rational rate) =>
        rate.IndexAt(run.StartS - anchorS) <= last.Length || rate.IndexAt(run.StartS) <= last.End;
}
