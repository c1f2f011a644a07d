using System.Collections.Immutable;
using ChannelAudit.Impedance;

namespace ChannelAudit.Reports.Json;

/// <summary>Reads impedance readings back; what follows from them (grades, when to measure again) is made from them once more.</summary>
internal static class ImpedanceReading
{
    /// <summary>The readings.</summary>
    public static ImpedanceReport Report(JsonField field)
    {
        ImmutableArray<ImpedanceWarning> warnings = field.List("warnings", Warning);
        return new ImpedanceReport
        {
            FileName = field.Text("file"),
            Sha256 = field.Text("sha256"),
            LatestAt = Time(field, "latest_at"),
            IsAfterTheSession = field.Flag("after_the_session"),
            Sites = field.List("sites", site => Site(site, warnings)),
            Across = field.List("across", Across),
            NotReadAcross = field.List("not_read_across", pair => (pair.Text("site"), pair.Text("other"))),
            Ground = field.ObjectOrNull("ground") is { } ground ? (ground.Number("least_kohm"), ground.Number("most_kohm")) : null,
            Warnings = warnings,
        };
    }

    private static SiteImpedance Site(JsonField field, ImmutableArray<ImpedanceWarning> warnings)
    {
        string name = field.Text("site");
        return new SiteImpedance
        {
            Name = name,
            Electrodes = field.Texts("electrodes"),
            Solved = field.ObjectOrNull("solved") is { } solved
                ? new SolvedImpedance(solved.Number("a_kohm"), solved.Number("b_kohm"), solved.Number("ground_kohm"))
                : null,
            Pairs = field.List("pairs", pair => Pair(pair, name)),
            Warnings = [.. warnings.Where(warning => warning.Sites.Contains(name, StringComparer.Ordinal))],
        };
    }

    private static PairImpedance Pair(JsonField field, string site)
    {
        ImpedancePair pair = ImpedanceCodes.From<ImpedancePair>(field.Text("pair"), ImpedanceCodes.Of) ?? throw field.Wrong("pair", "a-b, a-ground or b-ground");
        SiteElectrode from = new(site, pair == ImpedancePair.BToGround);
        SiteElectrode to = pair == ImpedancePair.AToB ? new SiteElectrode(site, IsSecond: true) : SiteElectrode.Ground;
        ImmutableArray<LoggedReading> readings = field.List("readings", reading => Reading(reading, from, to));
        return new PairImpedance(pair, readings.IsEmpty ? null : new ImpedanceCourse(readings));
    }

    private static AcrossImpedance Across(JsonField field)
    {
        SiteElectrode from = End(field.Object("from"));
        SiteElectrode to = End(field.Object("to"));
        ImmutableArray<LoggedReading> readings = field.List("readings", reading => Reading(reading, from, to));
        return readings.IsEmpty ? throw field.Wrong("readings", "a list of one reading or more") : new AcrossImpedance(readings, field.NumberOrNull("expected_kohm"));
    }

    private static SiteElectrode End(JsonField field) => new(field.Text("site"), string.Equals(field.Text("electrode"), "b", StringComparison.Ordinal));

    private static LoggedReading Reading(JsonField field, SiteElectrode from, SiteElectrode to) =>
        new(field.Whole("line"), from, to, field.Number("kohm"), Time(field, "time"), field.TextOrNull("phase"));

    private static ImpedanceWarning Warning(JsonField field) => new(
        ImpedanceCodes.From<ImpedanceWarningCode>(field.Text("warning"), ImpedanceCodes.Of) ?? throw field.Wrong("warning", "a warning that this version knows"),
        field.Texts("sites"),
        field.Text("seen"),
        field.Text("to_do"));

    private static ReadingTime? Time(JsonField field, string name) => field.TextOrNull(name) is not { } text ? null
        : ReadingTime.TryParse(text, out ReadingTime time) ? time
        : throw field.Wrong(name, "a time of day");
}
