using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using ChannelAudit.Runs;

namespace ChannelAudit.Reports.Json;

/// <summary>A file that a run was made with, as <c>audit.json</c> carries it: text where it is UTF-8, else Base64.</summary>
internal static class InputJson
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static readonly string[] Roles = [RunInput.Criteria, RunInput.Setup, RunInput.Readings, RunInput.Events];

    /// <summary>Writes it.</summary>
    public static void Write(Utf8JsonWriter json, RunInput input)
    {
        json.WriteStartObject();
        json.WriteString("role", input.Role);
        json.WriteString("file", input.FileName);
        json.WriteString("sha256", input.Sha256);
        if (TextOf(input) is { } text)
        {
            json.WriteString("text", text);
        }
        else
        {
            json.WriteBase64String("base64", input.Bytes.AsSpan());
        }

        json.WriteEndObject();
    }

    /// <summary>Reads it back, with the hash that stands beside it.</summary>
    /// <exception cref="ChannelAuditException">When a value is missing or of the wrong kind.</exception>
    public static (RunInput Input, string Sha256) Read(JsonField field)
    {
        string role = field.Text("role");
        if (!Roles.Contains(role, StringComparer.Ordinal))
        {
            throw field.Wrong("role", "criteria, setup, impedance or events");
        }

        // It becomes a file's name again.
        string name = field.Text("file");
        if (name is "" or "." or ".." || name.AsSpan().ContainsAny('/', '\\', '\0'))
        {
            throw field.Wrong("file", "the name of a file");
        }

        ImmutableArray<byte> bytes = field.TextOrNull("text") is { } text ? [.. Encoding.UTF8.GetBytes(text)] : FromBase64(field);
        return (new RunInput(role, name, bytes), field.Text("sha256"));
    }

    private static string? TextOf(RunInput input)
    {
        try
        {
            return Strict.GetString(input.Bytes.AsSpan());
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    private static ImmutableArray<byte> FromBase64(JsonField field)
    {
        try
        {
            return [.. Convert.FromBase64String(field.Text("base64"))];
        }
        catch (FormatException)
        {
            throw field.Wrong("base64", "Base64");
        }
    }
}
