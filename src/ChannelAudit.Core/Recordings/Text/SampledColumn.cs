using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>What the first rows say about one column.</summary>
internal sealed record SampledColumn
{
    private const int LeastRowsForTime = 4;

    private readonly ImmutableArray<double> _numbers;

    private SampledColumn(ImmutableArray<double> numbers) => _numbers = numbers;

    /// <summary>Every cell is missing.</summary>
    public required bool IsEmpty { get; init; }

    /// <summary>At least half of the cells that are not missing are words.</summary>
    public required bool IsText { get; init; }

    /// <summary>At least half of the cells that are not missing are clock times.</summary>
    public required bool IsClock { get; init; }

    /// <summary>Every row has a number, each greater than the one before, in steps of 0.5 to 1.5 times the median step.</summary>
    public bool RisesEvenly { get; private init; }

    /// <summary>Every row has a number, each 1 more than the one before.</summary>
    public bool CountsByOne { get; private init; }

    /// <summary>Looks at one column of the sampled rows.</summary>
    public static SampledColumn Of(ImmutableArray<ImmutableArray<string>> rows, int column, NumberFormatInfo format)
    {
        int words = 0;
        int clocks = 0;
        int present = 0;
        ImmutableArray<double>.Builder numbers = ImmutableArray.CreateBuilder<double>(rows.Length);
        foreach (ImmutableArray<string> row in rows)
        {
            CellKind kind = Cell.Read(row[column], format, out double value);
            present += kind == CellKind.Missing ? 0 : 1;
            words += kind == CellKind.Word ? 1 : 0;
            clocks += kind == CellKind.Clock ? 1 : 0;
            if (kind == CellKind.Number)
            {
                numbers.Add(value);
            }
        }

        double[] steps = numbers.Count == rows.Length && rows.Length >= LeastRowsForTime ? Steps(numbers) : [];
        return new SampledColumn(numbers.ToImmutable())
        {
            IsEmpty = present == 0,
            IsText = words > 0 && 2 * words >= present,
            IsClock = clocks > 0 && 2 * clocks >= present,
            RisesEvenly = AreEven(steps),
            CountsByOne = steps.Length > 0 && Array.TrueForAll(steps, step => step == 1),
        };
    }

    /// <summary>Whether the numbers are whole, of two to so many values, and stay the same from row to row more often than not.</summary>
    public bool IsHeldCode(int mostValues)
    {
        int distinct = _numbers.Distinct().Count();
        int changes = _numbers.Zip(_numbers.Skip(1)).Count(pair => pair.First != pair.Second);
        return distinct >= 2 && distinct <= mostValues && 4 * changes < _numbers.Length && _numbers.All(value => value == Math.Truncate(value));
    }

    private static double[] Steps(ImmutableArray<double>.Builder numbers)
    {
        double[] steps = new double[numbers.Count - 1];
        for (int i = 0; i < steps.Length; i++)
        {
            steps[i] = numbers[i + 1] - numbers[i];
        }

        return steps;
    }

    private static bool AreEven(double[] steps)
    {
        if (steps.Length == 0)
        {
            return false;
        }

        double[] sorted = [.. steps.Order()];
        double median = sorted[sorted.Length / 2];
        int odd = steps.Count(step => step < 0.5 * median || step > 1.5 * median);

        // A gap or two among the first rows does not make it another column; a fall does.
        return sorted[0] > 0 && 20 * odd <= steps.Length;
    }
}
