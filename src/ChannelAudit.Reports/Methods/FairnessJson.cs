using System.Text.Json;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Json;

namespace ChannelAudit.Reports.Methods;

/// <summary>Comparisons of exclusions in <c>methods-paragraph.json</c>.</summary>
internal static class FairnessJson
{
    /// <summary>Writes the object <c>fairness</c>.</summary>
    public static void Write(JsonText text, FairnessReport report)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject("fairness");
        json.WriteNumber("participants", report.Participants);
        json.WriteNumber("recordings_of_nobody_known", report.Unknown);
        json.WriteNumber("comparisons", report.Comparisons.Length);
        json.WriteNumber("tested", report.Tested);
        json.WriteNumber("stand_out", report.CountOf(FairnessAnswer.StandsOut));
        json.WriteNumber("not_assessed", report.CountOf(FairnessAnswer.NotAssessed));
        text.Rows("rows", report.Comparisons, WriteRow);
        json.WriteEndObject();
    }

    private static void WriteRow(Utf8JsonWriter json, FairnessComparison one)
    {
        json.WriteStartObject();
        json.WriteString("by", FairnessWords.One(one.By));
        json.WriteString("counted", FairnessWords.Things(one.Of));
        json.WriteString("channel", one.Channel);
        json.WriteString("answer", FairnessWords.Code(one.Answer));
        json.WriteString("test", FairnessWords.Code(one.Test));
        json.WriteNumber("participants", one.Units);
        json.WriteNumberOrNull("p", one.P);
        json.WriteNumberOrNull("smallest_p", one.SmallestP);
        json.WriteString("highest", one.Highest?.Level);
        MethodsJson.WriteShare(json, "highest_excluded", one.Highest?.Excluded ?? default);
        json.WriteString("lowest", one.Lowest?.Level);
        MethodsJson.WriteShare(json, "lowest_excluded", one.Lowest?.Excluded ?? default);
        json.WriteString("note", one.Note);
        json.WriteEndObject();
    }
}
