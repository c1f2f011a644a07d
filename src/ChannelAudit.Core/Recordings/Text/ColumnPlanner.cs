using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Decides what each column is for.</summary>
/// <remarks>
/// Names decide before numbers. Only where there is no name do numbers decide: a first column that rises evenly is time, whole numbers of few values that
/// hold are a marker. A named column of few values stays a channel: a dead electrode looks just like that.
/// </remarks>
internal static class ColumnPlanner
{
    private const int FewValues = 16;

    /// <summary>Plans the columns of a table, in file order.</summary>
    public static ImmutableArray<ColumnPlan> Plan(TextLayout layout)
    {
        NumberFormatInfo format = Cell.Format(layout.Dialect.DecimalSign);
        ImmutableArray<ColumnPlan>.Builder plans = ImmutableArray.CreateBuilder<ColumnPlan>(layout.Columns);
        bool hasTime = false;
        for (int column = 0; column < layout.Columns; column++)
        {
            ColumnPlan plan = Describe(layout, column, SampledColumn.Of(layout.Rows, column, format), hasTime);
            hasTime |= plan.Role == ColumnRole.Time;
            plans.Add(plan);
        }

        return KeepOneAxis(plans.ToImmutable());
    }

    private static ColumnPlan Describe(TextLayout layout, int column, SampledColumn sampled, bool hasTime)
    {
        string position = $"column {(column + 1).ToString(CultureInfo.InvariantCulture)}";
        string label = column < layout.Header.Length ? layout.Header[column] : string.Empty;
        (string name, TextUnit? unit) = TextUnit.SplitLabel(label);
        unit = (column < layout.Units.Length ? TextUnit.Parse(layout.Units[column]) : null) ?? unit;
        bool hasName = label.Length > 0;
        ColumnPlan plan = new()
        {
            Position = column,
            Name = hasName ? name : position,
            RawLabel = hasName ? label : position,
            Role = ColumnRole.Signal,
            Unit = unit,
            IsClock = sampled.IsClock,
            IsEmptyAtFirst = sampled.IsEmpty,
        };
        return hasName ? ByName(plan, sampled, hasTime) : ByNumbers(plan, sampled, hasTime);
    }

    private static ColumnPlan ByName(ColumnPlan plan, SampledColumn sampled, bool hasTime)
    {
        // "ms" and "seconds" are at once name and unit.
        bool isTime = plan.IsClock || ColumnNames.IsTime(plan.Name) || (plan.Unit?.Kind == TextUnitKind.Time && sampled.RisesEvenly);
        if (isTime && !sampled.IsText)
        {
            TextUnit? unit = plan.Unit ?? (TextUnit.Parse(plan.Name) is { Kind: TextUnitKind.Time } own ? own : null);
            return plan with { Role = ColumnRole.Time, Unit = unit };
        }

        if (sampled.IsText)
        {
            return plan with { Role = ColumnRole.Text, NotAudited = "text, not numbers" };
        }

        if (ColumnNames.IsCounter(plan.Name))
        {
            return plan with { Role = sampled.CountsByOne ? ColumnRole.Counter : ColumnRole.Marker, NotAudited = "a counter" };
        }

        if (ColumnNames.IsMarker(plan.Name))
        {
            return plan with { Role = ColumnRole.Marker, NotAudited = "a marker or trigger column" };
        }

        if (!hasTime && plan.Position == 0 && sampled.RisesEvenly && plan.Unit is null && !plan.Name.Contains("emg", StringComparison.OrdinalIgnoreCase))
        {
            return Guessed(plan, sampled);
        }

        return plan.Unit is { Kind: TextUnitKind.Other or TextUnitKind.Time or TextUnitKind.Clock }
            ? plan with { Role = ColumnRole.Marker, NotAudited = $"its unit {plan.Unit.Text} is no voltage" }
            : plan;
    }

    private static ColumnPlan ByNumbers(ColumnPlan plan, SampledColumn sampled, bool hasTime)
    {
        if (sampled.IsText)
        {
            return plan with { Role = ColumnRole.Text, NotAudited = "text, not numbers" };
        }

        if (!hasTime && plan.IsClock)
        {
            return plan with { Role = ColumnRole.Time };
        }

        if (!hasTime && plan.Position == 0 && sampled.RisesEvenly)
        {
            return Guessed(plan, sampled);
        }

        return sampled.IsHeldCode(FewValues)
            ? plan with { Role = ColumnRole.Marker, NotAudited = "few whole values that hold: taken as a marker", IsGuessed = true }
            : plan;
    }

    // 0, 1, 2, ... without a name may be seconds, milliseconds or a count: only as a count it claims nothing.
    private static ColumnPlan Guessed(ColumnPlan plan, SampledColumn sampled) =>
        plan with { Role = sampled.CountsByOne && plan.Unit is null ? ColumnRole.Counter : ColumnRole.Time, IsGuessed = true };

    // A second time column or a counter beside a time column is listed and not used.
    private static ImmutableArray<ColumnPlan> KeepOneAxis(ImmutableArray<ColumnPlan> plans)
    {
        ColumnPlan? axis = plans.FirstOrDefault(plan => plan.Role == ColumnRole.Time) ?? plans.FirstOrDefault(plan => plan.Role == ColumnRole.Counter);
        return
        [
            .. plans.Select(plan => plan.Role is ColumnRole.Time or ColumnRole.Counter && plan != axis
                ? plan with { Role = plan.IsClock ? ColumnRole.Text : ColumnRole.Marker, NotAudited = plan.NotAudited ?? "a second time column" }
                : plan),
        ];
    }
}
