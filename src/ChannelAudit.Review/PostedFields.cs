using System.Text.Json;
using ChannelAudit.Text;

namespace ChannelAudit.Review;

/// <summary>The body of a request: a flat object of texts and whole numbers, and nothing but what is asked for.</summary>
internal static class PostedFields
{
    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = 2 };

    /// <summary>Reads the fields.</summary>
    /// <param name="body">The body.</param>
    /// <param name="names">The fields, all of which must be there.</param>
    /// <param name="cancel">Ends the reading.</param>
    /// <returns>The fields by name; null when it is no such object.</returns>
    public static async Task<Dictionary<string, JsonElement>?> Read(Stream body, string[] names, CancellationToken cancel)
    {
        try
        {
            using MemoryStream bytes = new();
            await body.CopyToAsync(bytes, cancel);
            using JsonDocument document = StrictJson.Parse(bytes.ToArray(), Strict);
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                return null;
            }

            Dictionary<string, JsonElement> fields = new(StringComparer.Ordinal);
            foreach (JsonProperty field in document.RootElement.EnumerateObject())
            {
                if (!names.Contains(field.Name, StringComparer.Ordinal) || !fields.TryAdd(field.Name, field.Value.Clone()))
                {
                    return null;
                }
            }

            return fields.Count == names.Length ? fields : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>A whole number; null when the field is none.</summary>
    public static int? Whole(JsonElement field) => field.ValueKind == JsonValueKind.Number && field.TryGetInt32(out int number) ? number : null;

    /// <summary>A text; null when the field is none.</summary>
    public static string? Text(JsonElement field) => field.ValueKind == JsonValueKind.String ? field.GetString() : null;
}
