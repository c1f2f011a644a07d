using System.Text.Json;
using ChannelAudit.Excerpts;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Bundles;

/// <summary>Reads <c>bundle.json</c> back.</summary>
public static class BundleReading
{
    private const double HighestRate = 1e6;

    /// <summary>The index of a bundle.</summary>
    /// <exception cref="ChannelAuditException">When it is damaged, or of another layout.</exception>
    public static BundleIndex Of(BundleFile bundle)
    {
        ArgumentNullException.ThrowIfNull(bundle);
        return Read(bundle.Bytes(BundleIndex.FileName)!, $"{OneLine.Of(bundle.FilePath)}, {BundleIndex.FileName}");
    }

    /// <summary>The index.</summary>
    /// <param name="utf8">The file.</param>
    /// <param name="file">For messages.</param>
    /// <exception cref="ChannelAuditException">When it is damaged, or of another layout.</exception>
    internal static BundleIndex Read(byte[] utf8, string file)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(utf8);
            JsonField root = new(document.RootElement, file, string.Empty);
            return document.RootElement.ValueKind != JsonValueKind.Object || root.TextOrNull("format") is not BundleIndex.Format
                ? throw BundleErrors.OtherLayout(file)
                : Read(root);
        }
        catch (JsonException fault)
        {
            throw OutputErrors.NotJson(file, (fault.LineNumber ?? 0) + 1, fault);
        }
    }

    private static BundleIndex Read(JsonField root) => new()
    {
        Version = root.Text("version"),
        CriteriaSha256 = root.Text("criteria_sha256"),
        Least = root.Grade("least"),
        Recordings = root.List("recordings", field => new BundleRecording(field.Text("id"), field.List("channels", Facts))),
        Exclusions = root.List("exclusions", field => new Exclusion(
            field.Text("recording"), field.Text("channel"), field.WholeOrNull("trial"), field.Grade("computed"), field.Grade("final"), field.Texts("reasons"))),
        Blocks = root.List("samples", field => new BundleBlock(
            field.Text("path"),
            field.Text("recording"),
            field.Text("channel"),
            field.Whole("trial"),
            field.List("pieces", piece => (Whole(piece, "start"), Whole(piece, "length"))))),
        Entries = root.List("entries", field => new BundleEntry(field.Text("path"), field.Text("sha256"), Whole(field, "bytes"))),
    };

    private static ChannelFacts Facts(JsonField field)
    {
        (long numerator, long denominator) = (Whole(field, "rate_numerator"), Whole(field, "rate_denominator"));
        if (numerator <= 0 || denominator <= 0 || (double)numerator / denominator > HighestRate)
        {
            throw field.Wrong("rate_numerator", "part of a sampling rate up to 1 MHz");
        }

        double nominal = field.Number("mains_nominal_hz");
        double line = field.Number("mains_hz");
        return nominal is >= 1 and <= HighestRate && line is >= 1 and <= HighestRate
            ? new ChannelFacts
            {
                Name = field.Text("channel"),
                Rate = new Rational(numerator, denominator),
                IsMicrovolts = field.Flag("microvolts"),
                NotRaw = field.TextOrNull("not_raw"),
                UnitDoubt = field.TextOrNull("unit_doubt"),
                LowpassHz = field.NumberOrNull("lowpass_hz"),
                NominalHz = nominal,
                LineHz = line,
                Notched = [.. field.Numbers("notched_harmonics").Select(harmonic => (int)harmonic)],
                Scoring = Scoring(field.Object("scoring")),
            }
            : throw field.Wrong("mains_hz", "a mains frequency");
    }

    private static ScoringSetup Scoring(JsonField field) => new()
    {
        HighpassHz = field.NumberOrNull("highpass_hz"),
        LowpassHz = field.NumberOrNull("lowpass_hz"),
        NotchesHz = field.Numbers("notches_hz"),
        Order = field.Whole("order") is >= 1 and <= 20 and { } order ? order : throw field.Wrong("order", "an order from 1 to 20"),
    };

    private static long Whole(JsonField field, string name) =>
        field.Exact(name) is { } value && decimal.Truncate(value) == value && value is >= long.MinValue and <= long.MaxValue ? (long)value : throw field.Wrong(name, "a whole number");
}
