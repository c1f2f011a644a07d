using System.Text;
using System.Text.Json;

namespace ChannelAudit.Reports.Verifying;

/// <summary>The first value of two JSON files that differs, by its path: <c>channels[2].measures[4].value</c>.</summary>
internal static class JsonComparison
{
    /// <summary>The first difference; null when no value differs, or one of them is not JSON.</summary>
    public static FileDifference? Of(string file, byte[] there, byte[] again)
    {
        try
        {
            return Walk(file, there, again);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static FileDifference? Walk(string file, byte[] there, byte[] again)
    {
        Utf8JsonReader a = new(there);
        Utf8JsonReader b = new(again);
        JsonPlace place = new();
        while (true)
        {
            bool hasA = a.Read();
            bool hasB = b.Read();
            if (!hasA || !hasB)
            {
                return hasA == hasB ? null : new FileDifference(file, place.ToString(), hasA ? Value(ref a) : FileDifference.Nothing, hasB ? Value(ref b) : FileDifference.Nothing);
            }

            bool areSame = a.TokenType == b.TokenType && a.ValueSpan.SequenceEqual(b.ValueSpan);
            if (!areSame)
            {
                bool isName = a.TokenType == JsonTokenType.PropertyName && b.TokenType == JsonTokenType.PropertyName;
                place.Enter(b.TokenType, isName ? null : Name(ref b));
                return new FileDifference(file, $"line {Line(there, a.TokenStartIndex)}, {place}", Value(ref a), Value(ref b));
            }

            place.Enter(b.TokenType, Name(ref b));
        }
    }

    private static string? Name(ref Utf8JsonReader reader) => reader.TokenType == JsonTokenType.PropertyName ? reader.GetString() : null;

    private static string Value(ref Utf8JsonReader reader) => reader.TokenType switch
    {
        JsonTokenType.StartObject => "an object",
        JsonTokenType.StartArray => "a list",
        JsonTokenType.EndObject => "the end of an object",
        JsonTokenType.EndArray => "the end of a list",
        _ => FileDifference.Short(Encoding.UTF8.GetString(reader.ValueSpan)),
    };

    private static string Line(byte[] bytes, long index) => FormattableString.Invariant($"{bytes.AsSpan(0, (int)index).Count((byte)'\n') + 1}");
}
