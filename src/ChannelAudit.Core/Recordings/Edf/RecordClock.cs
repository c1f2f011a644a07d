using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Follows the start times of the records and finds the runs without a gap between them.</summary>
/// <param name="header">The header.</param>
/// <param name="warnings">Receives what is odd but readable.</param>
internal sealed class RecordClock(EdfHeader header, EdfWarnings warnings)
{
    // A device's clock jitters by milliseconds; an overlap above this (common practice: well below any scoring window) is another recording.
    private const decimal MostOverlapS = 0.020m;

    private readonly decimal durationS = header.RecordDurationS;
    private readonly decimal halfSampleS = header.MostSamples > 0 ? header.RecordDurationS / (2m * header.MostSamples) : 0;
    private readonly List<RecordRun> runs = [];
    private long records;

    // Continuous: the record whose stated time the next ones are compared with.
    private long anchorRecord;
    private decimal anchorS;

    /// <summary>The time that the file states for the first stored sample; annotations are counted from it.</summary>
    public decimal FirstS { get; private set; }

    /// <summary>The end of the last record, in seconds from the first stored sample.</summary>
    public decimal EndS { get; private set; }

    /// <summary>Whether any record has said when it starts.</summary>
    public bool IsStated { get; private set; }

    /// <summary>The runs, in order.</summary>
    public ImmutableArray<RecordRun> Runs => [.. runs];

    /// <summary>Takes the next record.</summary>
    /// <param name="statedS">The start that the record states, null when it states none.</param>
    /// <exception cref="ChannelAuditException">When a discontinuous recording runs backwards.</exception>
    public void Add(decimal? statedS)
    {
        if (statedS is null)
        {
            warnings.NoRecordTime(records);
        }
        else
        {
            IsStated = true;
        }

        if (records == 0)
        {
            FirstS = statedS ?? 0;
        }

        decimal startS = (statedS - FirstS) ?? EndS;
        if (header.Continuity == EdfContinuity.Discontinuous)
        {
            AddDiscontinuous(startS);
        }
        else
        {
            AddContinuous(startS, statedS is not null);
        }

        records++;
    }

    /// <summary>Takes every record of a file that states no times.</summary>
    public void AddUntimed(long count)
    {
        runs.Add(new RecordRun(0, count));
        records = count;
        EndS = count * durationS;
    }

    private void AddContinuous(decimal startS, bool isStated)
    {
        decimal expectedS = anchorS + ((records - anchorRecord) * durationS);
        if (isStated && header.MostSamples > 0 && decimal.Abs(startS - expectedS) > halfSampleS)
        {
            warnings.RecordTime(records, startS + FirstS, expectedS + FirstS);
            (anchorRecord, anchorS) = (records, startS);
        }

        if (records == 0)
        {
            runs.Add(new RecordRun(0, 1));
        }
        else
        {
            ExtendLast();
        }

        EndS = (records + 1) * durationS;
    }

    private void AddDiscontinuous(decimal startS)
    {
        decimal overlapS = records == 0 ? 0 : EndS - startS;
        if (overlapS > MostOverlapS)
        {
            throw EdfErrors.TimeRunsBack(warnings.File, records, startS + FirstS, EndS + FirstS);
        }

        if (records > 0 && startS == runs[^1].StartS + (runs[^1].Records * durationS))
        {
            ExtendLast();
        }
        else
        {
            if (overlapS > halfSampleS)
            {
                warnings.RecordOverlap(records, startS + FirstS, EndS + FirstS);
            }

            runs.Add(new RecordRun(startS, 1));
        }

        EndS = decimal.Max(EndS, startS) + durationS;
    }

    private void ExtendLast() => runs[^1] = runs[^1] with { Records = runs[^1].Records + 1 };
}
