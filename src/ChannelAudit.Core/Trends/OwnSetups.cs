using System.Collections.Immutable;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Trends;

/// <summary>One person's recordings beside the usual range of the same labs at the same time.</summary>
/// <remarks>Others are recordings of the same labs from 13 weeks before the first to 13 weeks after the last of the own. No two persons are compared, nothing is tested, and nobody is a cause.</remarks>
public sealed record OwnSetups
{
    /// <summary>With fewer own recordings nothing is said.</summary>
    public const int LeastOwn = 5;

    /// <summary>With fewer recordings of others nothing is said.</summary>
    public const int LeastOthers = 20;

    private const int Around = 91;

    /// <summary>The code of the person.</summary>
    public required string Technician { get; init; }

    /// <summary>How many recordings are the own.</summary>
    public required int Own { get; init; }

    /// <summary>How many others there are beside them.</summary>
    public required int Others { get; init; }

    /// <summary>The measures that both have.</summary>
    public ImmutableArray<OwnMeasure> Measures { get; init; } = [];

    /// <summary>Why nothing is said; null when something is.</summary>
    public string? NotAssessed => Own < LeastOwn ? FormattableString.Invariant($"fewer than {LeastOwn} own recordings ({Own})")
        : Others < LeastOthers ? FormattableString.Invariant($"fewer than {LeastOthers} recordings of others at that time ({Others})")
        : null;

    /// <summary>Sets them side by side; null when no recording names the person.</summary>
    /// <param name="report">The recordings; technicians only where the setup allows it.</param>
    /// <param name="technician">The code.</param>
    public static OwnSetups? Of(TrendReport report, string technician)
    {
        ArgumentNullException.ThrowIfNull(report);
        ImmutableArray<TrendSession> own = [.. report.Sessions.Where(session => string.Equals(session.Technician, technician, StringComparison.Ordinal))];
        if (own.IsEmpty)
        {
            return null;
        }

        DateOnly from = own[0].Day!.Value.AddDays(-Around);
        DateOnly to = own[^1].Day!.Value.AddDays(Around);
        HashSet<string> labs = new(own.Select(session => session.Lab ?? string.Empty), StringComparer.Ordinal);
        ImmutableArray<TrendSession> others =
        [
            .. report.Sessions.Where(session => session.Day >= from && session.Day <= to && labs.Contains(session.Lab ?? string.Empty)
                && !string.Equals(session.Technician, technician, StringComparison.Ordinal)),
        ];
        OwnSetups setups = new() { Technician = technician, Own = own.Length, Others = others.Length };
        return setups.NotAssessed is null ? setups with { Measures = [.. TrendMeasure.All.Select(measure => Measure(measure, own, others)).OfType<OwnMeasure>()] } : setups;
    }

    private static OwnMeasure? Measure(TrendMeasure measure, ImmutableArray<TrendSession> own, ImmutableArray<TrendSession> others)
    {
        double[] mine = [.. TrendValue.Of(own, measure).Select(value => value.Raw)];
        double[] theirs = [.. TrendValue.Of(others, measure).Select(value => value.Raw)];
        if (mine.Length < LeastOwn || theirs.Length < LeastOthers)
        {
            return null;
        }

        if (measure.Scale == TrendScale.Share)
        {
            return new OwnMeasure(measure, mine.Length, mine.Average(), WilsonInterval.Of((long)mine.Sum(), mine.Length), 0, theirs.Average(), 0, 0);
        }

        double low = Quantiles.Type7InPlace(theirs, 0.1);
        double high = Quantiles.Type7InPlace(theirs, 0.9);
        return new OwnMeasure(measure, mine.Length, Quantiles.Median(mine), null, mine.Count(value => value >= low && value <= high), Quantiles.Median(theirs), low, high);
    }
}
