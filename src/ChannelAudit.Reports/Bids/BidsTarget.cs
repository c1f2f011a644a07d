using System.Text.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Bids;

/// <summary>Decides whether an export may go into a folder: never into raw data.</summary>
internal static class BidsTarget
{
    /// <summary>The file that makes a folder a data set.</summary>
    public const string Description = "dataset_description.json";

    /// <summary>By this name an earlier export is known.</summary>
    public const string Generator = "ChannelAudit";

    private const string Derivatives = "derivatives";

    /// <summary>Refuses a place that is taken or inside raw data; nothing is created.</summary>
    /// <returns>The root of the raw data set below whose <c>derivatives/</c> the folder lies, or null.</returns>
    /// <exception cref="ChannelAuditException">When the folder cannot be used.</exception>
    public static string? Check(string folder)
    {
        string? raw = null;
        string full = Real(folder);
        for (string? place = full; place is not null; place = Path.GetDirectoryName(place))
        {
            if (!IsRaw(place))
            {
                continue;
            }

            string[] below = Path.GetRelativePath(place, full).Split(Path.DirectorySeparatorChar);
            if (below.Length < 2 || !string.Equals(below[0], Derivatives, StringComparison.Ordinal))
            {
                throw BidsErrors.RawDataSet(folder, place);
            }

            raw ??= place;
        }

        return IsFree(full) ? raw : throw BidsErrors.NotOurs(folder);
    }

    private static string Real(string folder)
    {
        try
        {
            return RealPath.Of(folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw BidsErrors.CannotRead(folder, fault);
        }
    }

    private static bool IsFree(string folder)
    {
        try
        {
            return !File.Exists(folder)
                && (!Directory.Exists(folder) || IsOurs(folder)
                    || Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).All(file => file.EndsWith(OutputBatch.PartialSuffix, StringComparison.Ordinal)));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw BidsErrors.CannotRead(folder, fault);
        }
    }

    // Without a type a data set is raw (BIDS 1.11, "Dataset description"); what cannot be read is taken for raw too.
    private static bool IsRaw(string folder) => Path.Exists(Path.Combine(folder, Description))
        && !(Read(folder) is { ValueKind: JsonValueKind.Object } root
            && root.TryGetProperty("DatasetType", out JsonElement type)
            && type.ValueKind == JsonValueKind.String
            && !string.Equals(type.GetString(), "raw", StringComparison.OrdinalIgnoreCase));

    private static bool IsOurs(string folder) => Read(folder) is { ValueKind: JsonValueKind.Object } root
        && root.TryGetProperty("GeneratedBy", out JsonElement generators)
        && generators.ValueKind == JsonValueKind.Array
        && generators.GetArrayLength() == 1
        && generators[0].ValueKind == JsonValueKind.Object
        && generators[0].TryGetProperty("Name", out JsonElement name)
        && name.ValueKind == JsonValueKind.String
        && string.Equals(name.GetString(), Generator, StringComparison.Ordinal);

    private static JsonElement? Read(string folder)
    {
        string file = Path.Combine(folder, Description);
        try
        {
            if (!File.Exists(file))
            {
                return null;
            }

            JsonDocumentOptions lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };
            using JsonDocument document = StrictJson.Parse(PlainFile.ReadAllBytes(file), lenient);
            return document.RootElement.Clone();
        }
        catch (JsonException)
        {
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw BidsErrors.CannotRead(file, fault);
        }
    }
}
