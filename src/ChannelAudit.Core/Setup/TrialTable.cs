using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The <c>[trials]</c> table.</summary>
internal static class TrialTable
{
    private static readonly ImmutableArray<string> Sources = ["annotations", "events", "trigger", "blocks"];

    /// <summary>Reads it.</summary>
    public static TrialSetup Read(TomlSection section)
    {
        ImmutableArray<decimal> window = section.Exacts("window");
        if (section.Find("window") is not null && window.Length != 2)
        {
            throw SetupErrors.NotAWindow(section, window.Length);
        }

        if (window.Length == 2 && window[0] >= window[1])
        {
            throw SetupErrors.WindowNotIncreasing(section, window[0], window[1]);
        }

        return new TrialSetup
        {
            From = Source(section),
            Rest = [.. section.Texts("rest").Distinct(StringComparer.Ordinal)],
            WindowFromS = window.IsEmpty ? null : window[0],
            WindowToS = window.IsEmpty ? null : window[1],
            BaselineS = section.Exact("baseline_s"),
            Minimum = section.Whole("minimum") ?? new TrialSetup().Minimum,
        };
    }

    private static TrialSource? Source(TomlSection section) => section.Text("from") switch
    {
        null => null,
        "annotations" => TrialSource.Annotations,
        "events" => TrialSource.Events,
        "trigger" => TrialSource.Trigger,
        "blocks" => TrialSource.Blocks,
        { } other => throw SetupErrors.NotAmong(section, "from", other, Sources),
    };
}
