using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>When the rows of a table were sampled.</summary>
/// <param name="Rate">Rows per second.</param>
/// <param name="Starts">Where unbroken stretches of rows start; the first is row 0 at index 0.</param>
internal sealed record TimeAxis(Rational Rate, ImmutableArray<RowStart> Starts)
{
    /// <summary>Rows one after the other at a stated rate.</summary>
    public static TimeAxis Even(Rational rate) => new(rate, [new RowStart(0, 0)]);

    /// <summary>Puts the rows in which a channel has numbers on the time axis.</summary>
    public ImmutableArray<Stretch> Place(ImmutableArray<RowRun> runs)
    {
        ImmutableArray<Stretch>.Builder stretches = ImmutableArray.CreateBuilder<Stretch>(runs.Length + Starts.Length - 1);
        int at = 0;
        foreach (RowRun run in runs)
        {
            for (long row = run.Row; row < run.RowEnd;)
            {
                while (at + 1 < Starts.Length && Starts[at + 1].Row <= row)
                {
                    at++;
                }

                long end = at + 1 < Starts.Length ? Math.Min(run.RowEnd, Starts[at + 1].Row) : run.RowEnd;
                stretches.Add(new Stretch(Starts[at].Timeline + row - Starts[at].Row, end - row, run.StoredStart + row - run.Row));
                row = end;
            }
        }

        return stretches.ToImmutable();
    }
}
