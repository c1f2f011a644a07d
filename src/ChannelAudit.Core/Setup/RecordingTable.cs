using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The <c>[recording]</c> table.</summary>
internal static class RecordingTable
{
    private static readonly ImmutableArray<string> Units = ["uV", "mV", "V", "none"];

    /// <summary>Reads it.</summary>
    public static RecordingSetup Read(TomlSection section) => new()
    {
        MainsHz = section.Number("mains_hz"),
        SamplingHz = section.Exact("sampling_hz"),
        Unit = Unit(section),
        AmplifierNoiseUv = section.Number("amplifier_noise_uv"),
        Lab = section.Text("lab"),
        Amplifier = section.Text("amplifier"),
        Technician = section.Text("technician"),
        Date = section.Date("date"),
    };

    private static string? Unit(TomlSection section)
    {
        // U+00B5 and U+03BC look alike and are both typed for the micro sign.
        string? unit = section.Text("unit")?.Replace('\u00B5', 'u').Replace('\u03BC', 'u');
        return unit is null || Units.Contains(unit, StringComparer.Ordinal) ? unit : throw SetupErrors.NotAmong(section, "unit", unit, Units);
    }
}
