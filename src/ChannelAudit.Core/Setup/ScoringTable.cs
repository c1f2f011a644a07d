using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The <c>[scoring]</c> table.</summary>
internal static class ScoringTable
{
    /// <summary>Reads the filter.</summary>
    public static ScoringSetup Read(TomlSection section)
    {
        ScoringSetup scoring = new()
        {
            HighpassHz = section.Number("highpass_hz"),
            LowpassHz = section.Number("lowpass_hz"),
            NotchesHz = Notches(section),
            Order = section.Whole("order") ?? ScoringSetup.UsualOrder,
        };
        if (scoring is { HighpassHz: { } high, LowpassHz: { } low } && low <= high)
        {
            throw SetupErrors.NothingPasses(section, high, low);
        }

        return scoring;
    }

    /// <summary>Adds the scoring window to the trials, where it may stand too.</summary>
    public static TrialSetup WithWindow(TrialSetup trials, TomlSection section)
    {
        if (TrialTable.Window(section) is not { } window)
        {
            return trials;
        }

        return trials is { WindowFromS: { } from, WindowToS: { } to } && (from, to) != window
            ? throw SetupErrors.TwoWindows(section, (from, to), window)
            : trials with { WindowFromS = window.From, WindowToS = window.To };
    }

    private static ImmutableArray<double> Notches(TomlSection section) => section.Find("notch_hz") is { IsNumber: true }
        ? [section.Number("notch_hz")!.Value]
        : [.. section.Numbers("notch_hz").Distinct().Order()];
}
