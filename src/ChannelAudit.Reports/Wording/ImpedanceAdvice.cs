using System.Collections.Immutable;
using ChannelAudit.Impedance;

namespace ChannelAudit.Reports.Wording;

/// <summary>What to do about readings, the most urgent first: short enough to be read while standing beside somebody.</summary>
public static class ImpedanceAdvice
{
    /// <summary>The cautions, short; they stand beside every advice that touches skin.</summary>
    public const string Caution =
        "Local protocol and qualified staff come first. Near the eye: no alcohol, no abrasive, no abrading again; eyes closed, wipe away from the eye. No alcohol "
        + "on abraded or broken skin; let it dry. Stop at redness, pain or on request: a site left questionable is better than sore skin. Take the meter off before recording.";

    /// <summary>What readings are not.</summary>
    public const string Apart = "Readings and signal are graded apart: a low reading excuses no bad signal, and no reading changes a verdict.";

    /// <summary>One entry a thing to do: about what, what was seen, what to do.</summary>
    /// <remarks>Where the unit of the table is in doubt, that is the only thing to do: no number in it says anything about skin.</remarks>
    /// <param name="report">The readings.</param>
    public static ImmutableArray<(string About, string Seen, string Advice)> Of(ImpedanceReport report) => report.IsUnitDoubted
        ? [.. report.Warnings.Where(warning => warning.Code == ImpedanceWarningCode.UnitInDoubt).Select(Told)]
        :
        [
            .. report.Warnings.Where(warning => warning.CastsDoubt).Select(Told),
            .. report.Sites.Where(site => site.Pairs.Any(pair => pair.Grade == ImpedanceGrade.Redo)).Select(site => Redo(site, report.IsAfterTheSession)),
            .. report.Warnings.Where(warning => !warning.CastsDoubt && !IsSaidByRedo(warning, report)).Select(Told),
            .. Wait(report),
        ];

    /// <summary>Whether somebody will touch skin for it: then the cautions belong beside it.</summary>
    /// <param name="report">The readings.</param>
    public static bool TouchesSkin(ImpedanceReport report) => !report.IsUnitDoubted
        && (report.Sites.Any(site => site.Grade >= ImpedanceGrade.Doubtful) || report.Warnings.Any(warning => warning.Code != ImpedanceWarningCode.Incomplete));

    /// <summary>Neighbours between which nothing was read, as a sentence; empty when there are none.</summary>
    /// <param name="report">The readings.</param>
    public static string NotReadAcross(ImpedanceReport report)
    {
        string pairs = string.Join("; ", report.NotReadAcross.Select(pair => $"{pair.One} and {pair.Other}"));
        return pairs.Length == 0
            ? string.Empty
            : $"Not read: across {pairs}. Gel between sites shows in no other reading: one from site to site, at the two electrodes that are nearest, would.";
    }

    // Where a contact is to be renewed anyway, that its electrodes are unequal needs no second line.
    private static bool IsSaidByRedo(ImpedanceWarning warning, ImpedanceReport report) =>
        warning.Code == ImpedanceWarningCode.Imbalance && report.Site(warning.Sites[0])!.Pairs.Any(pair => pair.Grade == ImpedanceGrade.Redo);

    private static (string About, string Seen, string Advice) Told(ImpedanceWarning warning) => (string.Join(" and ", warning.Sites), warning.Seen, warning.Advice);

    // Solved contacts say which one to renew; where they are in doubt, only the readings can be named.
    private static (string About, string Seen, string Advice) Redo(SiteImpedance site, bool isAfter)
    {
        string readings = string.Join(", ", site.Pairs.Where(pair => pair.Grade == ImpedanceGrade.Redo)
            .Select(pair => $"{ImpedanceWords.Of(pair.Pair, site)} {ImpedanceWords.Kohm(pair.Kohm!.Value)}"));
        string when = isAfter ? "next time, " : string.Empty;
        string what = site.IsDoubted || HighContacts.Of(site) is not { IsEmpty: false } high
            ? "the contacts of these readings"
            : string.Join(" and ", high.Select(contact => $"{contact.Name} (about {ImpedanceWords.Kohm(contact.Kohm)})"));
        return (site.Name, readings, $"{when}renew {what}, wait 5 minutes, measure all three again");
    }

    private static IEnumerable<(string About, string Seen, string Advice)> Wait(ImpedanceReport report)
    {
        if (!report.MeasureAgain)
        {
            yield break;
        }

        IEnumerable<string> sites = report.Sites.Where(site => site.Pairs.Any(pair => pair.Grade == ImpedanceGrade.Wait)).Select(site => site.Name);
        string when = report.MeasureAgainAt is { } at ? $"at {at.Clock}" : FormattableString.Invariant($"in {ImpedanceLimits.WaitMinutes} min");
        yield return (string.Join(", ", sites), "readings from 5 to 20 kΩ: gel soaks in for some minutes", $"wait, touch nothing there, measure again {when}");
    }
}
