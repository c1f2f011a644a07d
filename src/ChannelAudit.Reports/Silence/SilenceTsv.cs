using System.Collections.Immutable;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Tables;

namespace ChannelAudit.Reports.Silence;

/// <summary><c>detectability.tsv</c>: one row for each fault and size.</summary>
public static class SilenceTsv
{
    /// <summary>Its columns.</summary>
    public static ImmutableArray<string> Columns { get; } =
        ["fault", "reason", "size", "unit", "places", "found", "found_low", "found_high", "rejected", "rejected_low", "rejected_high", "not_assessed"];

    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(DetectabilityResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        using TsvWriter table = new(Columns);
        foreach (DetectedFault fault in result.Faults)
        {
            foreach (DetectedPoint point in fault.Points)
            {
                AddRow(table, fault, point);
            }

            if (fault.NotAssessed is not null)
            {
                AddRow(table, fault, null);
            }
        }

        return table.ToArray();
    }

    private static void AddRow(TsvWriter table, DetectedFault fault, DetectedPoint? point)
    {
        bool any = point is { Places: > 0 };
        table.Word(fault.Name);
        table.Word(fault.Reason);
        table.Number(point?.Size);
        table.Word(fault.Unit.Length == 0 ? Cells.Missing : fault.Unit);
        table.Count(point?.Places ?? 0);
        table.Count(point?.Found ?? 0);
        table.Number(any ? point!.FoundInterval.Low : null);
        table.Number(any ? point!.FoundInterval.High : null);
        table.Count(point?.Rejected ?? 0);
        table.Number(any ? point!.RejectedInterval.Low : null);
        table.Number(any ? point!.RejectedInterval.High : null);
        table.Label(fault.NotAssessed);
        table.EndRow();
    }
}
