using ChannelAudit.Decisions;
using ChannelAudit.Reports.Digests;

namespace ChannelAudit.Reports.Json;

/// <summary>The part of <c>audit.json</c> about decisions; not there when nobody decided anything.</summary>
internal static class DecisionsJson
{
    private const string Name = "decisions";

    /// <summary>Writes it.</summary>
    public static void Write(JsonText text, DecisionsDigest? decisions)
    {
        if (decisions is null || decisions.Mark.Lines == 0)
        {
            return;
        }

        text.Writer.WriteStartObject(Name);
        text.Writer.WriteNumber("lines", decisions.Mark.Lines);
        text.Writer.WriteString("head", decisions.Mark.Head);
        text.Writer.WriteNumber("in_force", decisions.InForce);
        text.Writer.WriteNumber("superseded", decisions.Superseded);
        text.Writer.WriteNumber("withdrawn", decisions.Withdrawn);
        text.Writer.WriteNumber("stale", decisions.Stale);
        text.Rows("elsewhere", decisions.Elsewhere, (row, one) =>
        {
            row.WriteStartObject();
            row.WriteNumber("line", one.Line);
            row.WriteString("recording", one.Recording);
            row.WriteEndObject();
        });
        text.Writer.WriteEndObject();
    }

    /// <summary>Reads it back; null when it is not there.</summary>
    /// <exception cref="ChannelAuditException">When a value is missing or of the wrong kind.</exception>
    public static DecisionsDigest? Read(JsonField root) => root.ObjectOrNull(Name) is not { } decisions ? null : new DecisionsDigest
    {
        Mark = new LedgerMark(decisions.Whole("lines"), decisions.Text("head")),
        InForce = decisions.Whole("in_force"),
        Superseded = decisions.Whole("superseded"),
        Withdrawn = decisions.Whole("withdrawn"),
        Stale = decisions.Whole("stale"),
        Elsewhere = decisions.List("elsewhere", one => (one.Whole("line"), one.Text("recording"))),
    };
}
