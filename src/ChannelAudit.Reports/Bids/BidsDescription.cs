using System.Text;
using System.Text.Json;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Bids;

/// <summary><c>dataset_description.json</c> and <c>README.md</c> of the derivative data set.</summary>
/// <remarks>BIDS 1.11, "Dataset description" and "Derived dataset and pipeline description".</remarks>
internal static class BidsDescription
{
    /// <summary>The version of BIDS that the files follow: the first with EMG is 1.11.0 (4 February 2026).</summary>
    public const string Version = "1.11.1";

    /// <summary>The description as UTF-8 bytes.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="rawLink">The raw data set, relative to this one; null when it is not known.</param>
    public static byte[] Render(StoredAudit audit, string? rawLink)
    {
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("Name", "Quality of EMG channels and trials");
        json.WriteString("BIDSVersion", Version);
        json.WriteString("DatasetType", "derivative");
        json.WriteStartArray("GeneratedBy");
        json.WriteStartObject();
        json.WriteString("Name", BidsTarget.Generator);
        json.WriteString("Version", audit.Version);
        json.WriteString("Description", $"Verdicts by rule; SHA-256 of the criteria {audit.Criteria.Sha256}, of the setup {audit.Setup.Sha256 ?? "n/a"}");
        json.WriteEndObject();
        json.WriteEndArray();
        if (rawLink is not null)
        {
            json.WriteStartObject("DatasetLinks");
            json.WriteString("raw", rawLink);
            json.WriteEndObject();
            json.WriteStartArray("SourceDatasets");
            json.WriteStartObject();
            json.WriteString("URL", rawLink);
            json.WriteEndObject();
            json.WriteEndArray();
        }

        json.WriteEndObject();
        return text.ToArray();
    }

    /// <summary>What a person finds in the folder, as UTF-8 bytes.</summary>
    public static byte[] Readme() => Encoding.UTF8.GetBytes(
        $"""
        # Quality of EMG channels and trials

        Made by ChannelAudit from an audit of surface EMG; follows BIDS {Version} as a derivative. For each recording there are two tables with a
        JSON file that defines every column:

        - `*_desc-quality_channels.tsv`: a row a channel;
        - `*_desc-quality_events.tsv`: a row a trial and channel.

        `status` is `good` or `bad`, and `n/a` where a person should look first: `quality_grade` says `questionable` there. What is listed
        in `not_assessed` could not be judged, which is not the same as good. A recording without a BIDS name of its own stands under the letters and
        digits of its id, task `unnamed`; the JSON files name the recording and its SHA-256.

        """);
}
