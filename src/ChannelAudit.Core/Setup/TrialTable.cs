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
        (decimal From, decimal To)? window = Window(section);
        return new TrialSetup
        {
            From = Source(section),
            Trigger = TriggerKeys.Read(section),
            Rest = [.. section.Texts("rest").Distinct(StringComparer.Ordinal)],
            WindowFromS = window?.From,
            WindowToS = window?.To,
            BaselineS = section.Exact("baseline_s"),
            Minimum = section.Whole("minimum") ?? new TrialSetup().Minimum,
        };
    }

    /// <summary>A scoring window, which may stand in two tables; null when it is left out.</summary>
    public static (decimal From, decimal To)? Window(TomlSection section)
    {
        ImmutableArray<decimal> window = section.Exacts("window");
        if (section.Find("window") is null)
        {
            return null;
        }

        if (window.Length != 2)
        {
            throw SetupErrors.NotAWindow(section, window.Length);
        }

        return window[0] < window[1] ? (window[0], window[1]) : throw SetupErrors.WindowNotIncreasing(section, window[0], window[1]);
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
