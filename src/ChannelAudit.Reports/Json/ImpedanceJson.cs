using System.Text.Json;
using ChannelAudit.Impedance;

namespace ChannelAudit.Reports.Json;

/// <summary>Impedance readings in <c>result.json</c>: every reading with its time and phase, and what was made of them.</summary>
internal static class ImpedanceJson
{
    /// <summary>Writes the readings, or null when none were given.</summary>
    public static void Write(JsonText text, ImpedanceReport? report)
    {
        Utf8JsonWriter json = text.Writer;
        if (report is null)
        {
            json.WriteNull("impedance");
            return;
        }

        json.WriteStartObject("impedance");
        json.WriteString("file", report.FileName);
        json.WriteString("sha256", report.Sha256);
        json.WriteString("latest_at", report.LatestAt?.ToString());
        json.WriteBoolean("after_the_session", report.IsAfterTheSession);
        json.WriteString("measure_again_at", report.MeasureAgainAt?.ToString());
        json.WriteStartArray("sites");
        foreach (SiteImpedance site in report.Sites)
        {
            WriteSite(text, site);
        }

        json.WriteEndArray();
        json.WriteStartArray("across");
        foreach (AcrossImpedance across in report.Across)
        {
            WriteAcross(text, across);
        }

        json.WriteEndArray();
        text.Rows("not_read_across", report.NotReadAcross, WriteNotRead);
        WriteGround(json, report);
        text.Rows("warnings", report.Warnings, WriteWarning);
        json.WriteEndObject();
    }

    private static void WriteSite(JsonText text, SiteImpedance site)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("site", site.Name);
        json.WriteTexts("electrodes", site.Electrodes);
        json.WriteString("grade", site.Grade is { } grade ? ImpedanceCodes.Of(grade) : null);
        if (site.Solved is { } solved)
        {
            json.WriteStartObject("solved");
            json.WriteNumberOrNull("a_kohm", solved.AKohm);
            json.WriteNumberOrNull("b_kohm", solved.BKohm);
            json.WriteNumberOrNull("ground_kohm", solved.GroundKohm);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("solved");
        }

        json.WriteStartArray("pairs");
        foreach (PairImpedance pair in site.Pairs)
        {
            json.WriteStartObject();
            json.WriteString("pair", ImpedanceCodes.Of(pair.Pair));
            json.WriteString("grade", pair.Grade is { } one ? ImpedanceCodes.Of(one) : null);
            text.Rows("readings", pair.Course?.Readings ?? [], WriteReading);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteAcross(JsonText text, AcrossImpedance across)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        WriteEnd(json, "from", across.Reading.From);
        WriteEnd(json, "to", across.Reading.To);
        json.WriteNumberOrNull("expected_kohm", across.ExpectedKohm);
        json.WriteBoolean("joined", across.SaysJoined);
        text.Rows("readings", across.Readings, WriteReading);
        json.WriteEndObject();
    }

    private static void WriteEnd(Utf8JsonWriter json, string name, SiteElectrode end)
    {
        json.WriteStartObject(name);
        json.WriteString("site", end.Site);
        json.WriteString("electrode", end.Letter);
        json.WriteEndObject();
    }

    private static void WriteReading(Utf8JsonWriter json, LoggedReading reading)
    {
        json.WriteStartObject();
        json.WriteNumber("line", reading.Line);
        json.WriteNumber("kohm", reading.Kohm);
        json.WriteTextIfAny("time", reading.Time?.ToString());
        json.WriteTextIfAny("phase", reading.Phase);
        json.WriteEndObject();
    }

    private static void WriteNotRead(Utf8JsonWriter json, (string One, string Other) pair)
    {
        json.WriteStartObject();
        json.WriteString("site", pair.One);
        json.WriteString("other", pair.Other);
        json.WriteEndObject();
    }

    private static void WriteGround(Utf8JsonWriter json, ImpedanceReport report)
    {
        if (report.Ground is not { } ground)
        {
            json.WriteNull("ground");
            return;
        }

        json.WriteStartObject("ground");
        json.WriteNumberOrNull("least_kohm", ground.LeastKohm);
        json.WriteNumberOrNull("most_kohm", ground.MostKohm);
        json.WriteEndObject();
    }

    private static void WriteWarning(Utf8JsonWriter json, ImpedanceWarning warning)
    {
        json.WriteStartObject();
        json.WriteString("warning", ImpedanceCodes.Of(warning.Code));
        json.WriteTexts("sites", warning.Sites);
        json.WriteString("seen", warning.Seen);
        json.WriteString("to_do", warning.Advice);
        json.WriteEndObject();
    }
}
