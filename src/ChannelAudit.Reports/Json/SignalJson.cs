using System.Text.Json;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Json;

/// <summary>What a channel is compared by with other recordings, in <c>result.json</c>.</summary>
internal static class SignalJson
{
    /// <summary>Writes it; nothing when it was not measured.</summary>
    public static void Write(Utf8JsonWriter json, ChannelSignal? signal)
    {
        if (signal is null)
        {
            return;
        }

        json.WriteStartObject("signal");
        json.WriteString("unit", signal.Unit);
        json.WriteNumberOrNull("highpass_hz", signal.HighpassHz);
        json.WriteNumberOrNull("lowpass_hz", signal.LowpassHz);
        json.WriteStartArray("notches_hz");
        foreach (double notch in signal.NotchesHz)
        {
            json.WriteNumberValue(notch);
        }

        json.WriteEndArray();
        json.WriteNumberOrNull("level_low", signal.LevelLow);
        json.WriteNumberOrNull("level_middle", signal.LevelMiddle);
        json.WriteNumberOrNull("level_high", signal.LevelHigh);
        json.WriteNumberOrNull("low_db", signal.LowDb);
        json.WriteNumberOrNull("high_db", signal.HighDb);
        json.WriteNumber("swings_up", signal.SwingsUp);
        json.WriteNumber("swings_down", signal.SwingsDown);
        json.WriteString("print", signal.Print);
        json.WriteEndObject();
    }

    /// <summary>Reads it back.</summary>
    public static ChannelSignal Read(JsonField field) => new()
    {
        Unit = field.Text("unit"),
        HighpassHz = field.NumberOrNull("highpass_hz"),
        LowpassHz = field.NumberOrNull("lowpass_hz"),
        NotchesHz = field.Numbers("notches_hz"),
        LevelLow = field.NumberOrNull("level_low"),
        LevelMiddle = field.NumberOrNull("level_middle"),
        LevelHigh = field.NumberOrNull("level_high"),
        LowDb = field.NumberOrNull("low_db"),
        HighDb = field.NumberOrNull("high_db"),
        SwingsUp = field.Whole("swings_up"),
        SwingsDown = field.Whole("swings_down"),
        Print = field.Text("print"),
    };
}
