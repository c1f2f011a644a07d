using System.Text.Json;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Json;

/// <summary>Small additions to the writer: values that may be missing, verdicts, lists of codes.</summary>
internal static class JsonWriting
{
    // Adding zero turns minus zero into zero and changes nothing else.

    /// <summary>A number or null.</summary>
    public static void WriteNumberOrNull(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number + 0.0);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>A number, or nothing at all when there is none: for rows that come by the thousand.</summary>
    public static void WriteNumberIfAny(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number + 0.0);
        }
    }

    /// <summary>A text, or nothing at all when there is none.</summary>
    public static void WriteTextIfAny(this Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, value);
        }
    }

    /// <summary>A verdict or grade by its word.</summary>
    public static void WriteGrade(this Utf8JsonWriter json, string name, Grade grade) => json.WriteString(name, VerdictWords.Code(grade));

    /// <summary>A list of texts.</summary>
    public static void WriteTexts(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
