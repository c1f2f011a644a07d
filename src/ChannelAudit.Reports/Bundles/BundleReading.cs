using System.Collections.Immutable;
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
    private const double LeastMainsHz = 10;
    private const double MostMainsHz = 500;
    private const double MostHarmonics = 1000;
    private const int MostNumbers = 1000;
    private const int MostOrder = 8;

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
            using JsonDocument document = StrictJson.Parse(utf8);
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
        Omitted = root.List("omitted", field => new BundleOmission(field.Text("recording"), field.Text("channel"), field.Whole("trial"))),
        Entries = root.List("entries", field => new BundleEntry(field.Text("path"), field.Text("sha256"), Whole(field, "bytes"))),
    };

    private static ChannelFacts Facts(JsonField field) => new()
    {
        Name = field.Text("channel"),
        Rate = Rate(field),
        IsMicrovolts = field.Flag("microvolts"),
        NotRaw = field.TextOrNull("not_raw"),
        UnitDoubt = field.TextOrNull("unit_doubt"),
        LowpassHz = field.NumberOrNull("lowpass_hz"),
        NominalHz = Within(field, "mains_nominal_hz", LeastMainsHz, MostMainsHz),
        LineHz = Within(field, "mains_hz", LeastMainsHz, MostMainsHz),
        Notched = [.. Numbers(field, "notched_harmonics", 1, MostHarmonics).Select(harmonic => (int)harmonic)],
        Scoring = Scoring(field.Object("scoring")),
    };

    private static Rational Rate(JsonField field)
    {
        (long numerator, long denominator) = (Whole(field, "rate_numerator"), Whole(field, "rate_denominator"));
        return numerator > 0 && denominator > 0 && new Rational(numerator, denominator) is var rate && BundleLimits.Takes(rate)
            ? rate
            : throw field.Wrong("rate_numerator", FormattableString.Invariant($"part of a sampling rate from {BundleLimits.LeastRateHz} to {BundleLimits.MostRateHz} Hz"));
    }

    // The ranges that a setup may give.
    private static ScoringSetup Scoring(JsonField field) => new()
    {
        HighpassHz = WithinOrNull(field, "highpass_hz", 0.01, 400),
        LowpassHz = WithinOrNull(field, "lowpass_hz", 1, 100_000),
        NotchesHz = Numbers(field, "notches_hz", 1, 100_000),
        Order = field.Whole("order") is >= 1 and <= MostOrder and { } order ? order : throw field.Wrong("order", FormattableString.Invariant($"an order from 1 to {MostOrder}")),
    };

    private static double Within(JsonField field, string name, double least, double most) =>
        field.Number(name) is var value && value >= least && value <= most ? value : throw field.Wrong(name, FormattableString.Invariant($"a number from {least} to {most}"));

    private static double? WithinOrNull(JsonField field, string name, double least, double most) =>
        field.NumberOrNull(name) is null ? null : Within(field, name, least, most);

    private static ImmutableArray<double> Numbers(JsonField field, string name, double least, double most)
    {
        ImmutableArray<double> numbers = field.Numbers(name);
        return numbers.Length <= MostNumbers && numbers.All(number => number >= least && number <= most)
            ? numbers
            : throw field.Wrong(name, FormattableString.Invariant($"a list of at most {MostNumbers} numbers from {least} to {most}"));
    }

    private static long Whole(JsonField field, string name) =>
        field.Exact(name) is { } value && decimal.Truncate(value) == value && value is >= long.MinValue and <= long.MaxValue ? (long)value : throw field.Wrong(name, "a whole number");
}
