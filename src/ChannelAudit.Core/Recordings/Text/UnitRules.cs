using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>Decides the unit of each channel: the column's own, else the preamble's, else the setup's, else microvolts.</summary>
internal static class UnitRules
{
    /// <summary>Gives every channel a unit.</summary>
    public static ImmutableArray<ColumnPlan> Apply(ImmutableArray<ColumnPlan> plans, Preamble preamble, ReadOptions options, WarningList warnings)
    {
        TextUnit? setup = options.Unit is { } stated ? TextUnit.Parse(stated) : null;
        if (preamble.Unit is { } unit && plans.Any(IsSilent))
        {
            warnings.Add("preamble", $"unit {unit.Text} taken from the lines above the table");
        }

        ColumnPlan? other = plans.FirstOrDefault(plan => plan.Role == ColumnRole.Signal && setup is not null && (plan.Unit ?? preamble.Unit) is { } own
            && (own.Kind != setup.Kind || own.Factor != setup.Factor));
        if (other is not null)
        {
            warnings.Add("header", $"\"{other.RawLabel}\" is in {(other.Unit ?? preamble.Unit)!.Text}, the setup says {options.Unit}; the file's own unit is used");
        }

        return [.. plans.Select(plan => IsSilent(plan) ? plan with { Unit = preamble.Unit ?? setup } : plan)];
    }

    /// <summary>What the column's numbers are multiplied by to give microvolts; 1 for everything that is no voltage.</summary>
    public static double Scale(ColumnPlan plan) => plan is { Role: ColumnRole.Signal, Unit: { Kind: TextUnitKind.Voltage } unit } ? unit.Factor : 1;

    private static bool IsSilent(ColumnPlan plan) => plan is { Role: ColumnRole.Signal, Unit: null };
}
