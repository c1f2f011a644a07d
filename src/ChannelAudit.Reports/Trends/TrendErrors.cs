using ChannelAudit.Text;

namespace ChannelAudit.Reports.Trends;

/// <summary>Every message about what is to be compared over time.</summary>
internal static class TrendErrors
{
    /// <summary>No audit in any of the places.</summary>
    public static ChannelAuditException NoAudit(string place) => new(
        FaultKind.Usage,
        $"{OneLine.Of(place)}: {(Path.Exists(place) ? "no audit.json of channelaudit in it or below" : "there is no such folder")}",
        "give folders that screen wrote with --out, or a folder of such folders");

    /// <summary>A folder that cannot be looked through.</summary>
    public static ChannelAuditException CannotSearch(string place, Exception inner) => new(
        FaultKind.Usage, $"{OneLine.Of(place)}: cannot be looked through: {OneLine.Of(inner.Message)}", "see that you may read it and what is below it", inner);

    /// <summary>Nothing that happened on a day.</summary>
    public static ChannelAuditException NoDay(int recordings) => new(
        FaultKind.Usage,
        FormattableString.Invariant($"none of {recordings} recordings has a day: the setups of these audits say none"),
        "say it in the setup, as date in a [[recordings]] table or as {date} in path of [participants], and run screen again");

    /// <summary>A person was asked for where the setups do not say that people may be shown.</summary>
    public static ChannelAuditException NoPeople(string code) => new(
        FaultKind.Usage,
        $"--own {OneLine.Of(code)}: no setup of these audits says that people may be shown",
        "ask those whom it is about; then write people = true below [trend] in the setup and run screen again");

    /// <summary>A person who prepared nothing.</summary>
    public static ChannelAuditException NoSuchTechnician(string code) => new(
        FaultKind.Usage,
        $"--own {OneLine.Of(code)}: no recording names this technician",
        "give the code as it stands at technician in the setup; others are not listed");
}
