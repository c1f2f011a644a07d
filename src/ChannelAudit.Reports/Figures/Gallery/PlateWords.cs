using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Synthesis.Gallery;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>What the audit said of a specimen, in the words of all outputs.</summary>
internal static class PlateWords
{
    private const int MostMeasures = 2;

    /// <summary>The look of the trial that is shown.</summary>
    public static VerdictLook Look(GalleryExhibit exhibit) => VerdictLooks.Of(exhibit.Cell);

    /// <summary>The verdict of the trial that is shown, with its reasons and numbers: <c>reject: 50 Hz mains 15.1 µV</c>.</summary>
    public static string Verdict(GalleryExhibit exhibit)
    {
        string word = VerdictLooks.Word(Look(exhibit));
        string reasons = string.Join("; ", exhibit.Cell.Reasons.Select(reason => Reason(exhibit, reason)));
        string open = HasOpenQuestions(exhibit) ? $"; not assessed: {FigureText.Names(Open(exhibit))}" : string.Empty;
        return $"{word}{(reasons.Length > 0 ? ": " : string.Empty)}{reasons}{open}";
    }

    /// <summary>The verdict of the whole channel: <c>pass</c>.</summary>
    public static string Channel(GalleryExhibit exhibit) => FigureText.Of(exhibit.Recording, exhibit.Channel);

    /// <summary>The numbers that decide about the subject's reason: <c>line_rms 15.1 µV, line_ratio 17.4 dB</c>.</summary>
    public static string Measures(GalleryExhibit exhibit, string code)
    {
        (string Name, string Value)[] known = [.. ReasonWords.For(code).KeyMeasures.SelectMany(name => Value(exhibit, name)).Take(MostMeasures)];
        return string.Join(", ", known.Select(one => $"{one.Name} {one.Value}"));
    }

    /// <summary>What is worth knowing and changes no verdict; empty when there is nothing.</summary>
    public static string Information(GalleryExhibit exhibit) => string.Join(' ', exhibit.Recording.Information
        .Where(finding => finding.Channels.Contains(exhibit.Channel.Name, StringComparer.Ordinal))
        .Select(finding => $"{finding.Text}. Likely cause: {finding.Cause}."));

    /// <summary>What a specimen is, as it was made: <c>the fault</c>, <c>another fault</c> with its code, or <c>no fault</c>.</summary>
    public static string Role(GallerySubject subject, GallerySpecimen specimen)
    {
        if (ReferenceEquals(specimen, subject.Fault))
        {
            return "The fault";
        }

        if (specimen.Fault is not { } code)
        {
            return "Resembles it, but is no fault";
        }

        return $"Resembles it, but is {code}{(IsAssessed(code) ? string.Empty : " (not yet assessed)")}";
    }

    /// <summary>Whether something was not assessed: by the audit of this recording, or what is wrong with it by this version at all.</summary>
    public static bool HasOpenQuestions(GalleryExhibit exhibit) => Open(exhibit).Any();

    private static IEnumerable<string> Open(GalleryExhibit exhibit)
    {
        IEnumerable<string> said = exhibit.Cell.NotAssessed.Select(question => question.Reason);
        return exhibit.Specimen.Fault is { } code && !IsAssessed(code) ? said.Append(code) : said;
    }

    private static bool IsAssessed(string code) =>
        DefaultCriteria.All.All.Any(criterion => string.Equals(criterion.Reason, code, StringComparison.Ordinal));

    private static string Reason(GalleryExhibit exhibit, string reason)
    {
        // A finding of the whole channel or of a stretch may be what the trial carries.
        Finding? worst = ReasonPhrase.Worst(exhibit.Cell.Findings.Where(finding => Is(finding, reason)))
            ?? ReasonPhrase.Worst(exhibit.Channel.Findings.Where(finding => finding.Grade > Grade.Pass && Is(finding, reason)));
        return worst is null ? FigureText.Names([reason]) : FigureText.Of(exhibit.Recording, exhibit.Channel, worst);
    }

    private static bool Is(Finding finding, string reason) => string.Equals(finding.Reason, reason, StringComparison.Ordinal);

    private static IEnumerable<(string Name, string Value)> Value(GalleryExhibit exhibit, string name)
    {
        if (exhibit.Cell.Measures.ValueOf(name) is { } value)
        {
            yield return (name, Quantities.WithUnit(value, MeasureCatalog.Get(name).Unit));
        }

        BridgeEvidence? evidence = exhibit.Specimen.Partner is null ? null : exhibit.Recording.Pairs[0].Evidence;
        double? rho = name switch
        {
            "rho_rest" => evidence?.RhoRest,
            "rho_high_rest" => evidence?.RhoHighRest,
            _ => null,
        };
        if (rho is { } known)
        {
            yield return (name, Quantities.Short(Math.Round(known, 2) + 0.0));
        }
    }
}
