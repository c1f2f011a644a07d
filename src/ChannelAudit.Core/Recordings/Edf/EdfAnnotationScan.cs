using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Goes once through the annotation signals of a file: annotations, and when its records start.</summary>
internal sealed class EdfAnnotationScan
{
    // Records below this are read many at a time, since their annotations lie close together.
    private const int SmallRecordBytes = 8192;
    private const int WindowBytes = 1 << 20;

    private readonly EdfFile file;
    private readonly EdfHeader header;
    private readonly EdfWarnings warnings;
    private readonly TalParser parser;
    private readonly RecordClock clock;
    private readonly List<(long Record, Annotation Annotation)> found = [];
    private readonly List<Tal> lists = [];
    private byte[] window = [];
    private long windowStart;
    private int windowLength;

    private EdfAnnotationScan(EdfFile file, EdfHeader header, EdfWarnings warnings)
    {
        this.file = file;
        this.header = header;
        this.warnings = warnings;
        parser = new TalParser(warnings);
        clock = new RecordClock(header, warnings);
    }

    /// <summary>Reads the annotations and times of every record.</summary>
    /// <param name="file">The open file.</param>
    /// <param name="header">Its header.</param>
    /// <param name="records">Records in the file.</param>
    /// <param name="warnings">Receives what is odd but readable.</param>
    /// <returns>The annotations in file order, onsets from the first stored sample; and the clock of the records.</returns>
    /// <exception cref="ChannelAuditException">When a discontinuous recording runs backwards, or the file cannot be read.</exception>
    public static (ImmutableArray<Annotation> Annotations, RecordClock Clock) Run(
        EdfFile file, EdfHeader header, long records, EdfWarnings warnings)
    {
        EdfAnnotationScan scan = new(file, header, warnings);
        ImmutableArray<EdfSignalHeader> signals = [.. header.Signals.Where(signal => signal.IsAnnotations && signal.SamplesPerRecord > 0)];
        if (signals.IsEmpty)
        {
            scan.clock.AddUntimed(records);
            return ([], scan.clock);
        }

        for (long record = 0; record < records; record++)
        {
            scan.ReadRecord(record, signals);
        }

        if (header.Continuity == EdfContinuity.Discontinuous && !scan.clock.IsStated)
        {
            throw EdfErrors.NoRecordTimes(file.Name);
        }

        return (scan.Finish(), scan.clock);
    }

    private void ReadRecord(long record, ImmutableArray<EdfSignalHeader> signals)
    {
        decimal? start = null;
        for (int s = 0; s < signals.Length; s++)
        {
            lists.Clear();
            parser.Parse(Bytes(record, signals[s]), record, lists);
            for (int i = 0; i < lists.Count; i++)
            {
                // The first list of the first annotation signal, when its first text is empty, is the record's start.
                bool isStart = s == 0 && i == 0 && lists[0].Texts is not [{ Length: > 0 }, ..];
                if (isStart)
                {
                    start = lists[0].OnsetS;
                }

                Keep(record, lists[i], isStart);
            }
        }

        clock.Add(start);
    }

    private void Keep(long record, Tal tal, bool isStart)
    {
        foreach (string text in tal.Texts.Where(text => text.Length > 0))
        {
            found.Add((record, new Annotation(tal.OnsetS, tal.DurationS, text)));
        }

        // A length of time without a text still says that something was there.
        if (!isStart && tal.DurationS is not null && tal.Texts.All(text => text.Length == 0))
        {
            found.Add((record, new Annotation(tal.OnsetS, tal.DurationS, string.Empty)));
        }
    }

    private ImmutableArray<Annotation> Finish()
    {
        ImmutableArray<Annotation>.Builder annotations = ImmutableArray.CreateBuilder<Annotation>(found.Count);
        foreach ((long record, Annotation annotation) in found)
        {
            decimal onsetS = annotation.OnsetS - clock.FirstS;
            if (header.MostSamples > 0 && (onsetS < 0 || onsetS > clock.EndS))
            {
                warnings.AnnotationOutside(record, onsetS, clock.EndS);
            }

            annotations.Add(annotation with { OnsetS = onsetS });
        }

        return annotations.MoveToImmutable();
    }

    private ReadOnlySpan<byte> Bytes(long record, EdfSignalHeader signal)
    {
        long offset = header.HeaderBytes + (record * header.RecordBytes) + signal.RecordOffset;
        long length = (long)signal.SamplesPerRecord * header.SampleBytes;
        if (length > Array.MaxLength)
        {
            throw EdfErrors.AnnotationsTooLarge(file.Name, length);
        }

        if (offset < windowStart || offset + length > windowStart + windowLength)
        {
            long wanted = header.RecordBytes <= SmallRecordBytes ? Math.Max(WindowBytes, length) : length;
            windowLength = (int)Math.Min(wanted, file.Length - offset);
            windowStart = offset;
            if (window.Length < windowLength)
            {
                window = new byte[windowLength];
            }

            file.Read(offset, window.AsSpan(0, windowLength));
        }

        return window.AsSpan((int)(offset - windowStart), (int)length);
    }
}
