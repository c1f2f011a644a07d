using System.Collections.Immutable;

namespace ChannelAudit.Impedance;

/// <summary>Readings that are all so high that they may be in Ω: said, never rescaled.</summary>
internal static class UnitRule
{
    /// <summary>The warning, or none.</summary>
    public static IEnumerable<ImpedanceWarning> Warnings(ImmutableArray<LoggedReading> readings)
    {
        if (readings.IsEmpty || readings.Any(reading => reading.Kohm < ImpedanceLimits.DoubtfulUnitKohm))
        {
            yield break;
        }

        ImmutableArray<string> sites =
        [
            .. readings.SelectMany(reading => new[] { reading.From, reading.To })
                .Where(end => !end.IsGround)
                .Select(end => end.Site)
                .Distinct(StringComparer.Ordinal),
        ];
        string least = ImpedanceWords.Kohm(readings.Min(reading => reading.Kohm));
        yield return new ImpedanceWarning(
            ImpedanceWarningCode.UnitInDoubt, sites, $"no reading is below {least}: Ω taken for kΩ, or no electrode touches the skin",
            "look at the meter's unit; the table holds kΩ");
    }
}
