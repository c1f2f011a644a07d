using ChannelAudit.Reports.Fairness;

namespace ChannelAudit.Reports.Methods;

/// <summary>What a paper has to say of whether exclusions are even.</summary>
internal static class FairnessSentences
{
    private const int MostNamed = 6;

    /// <summary>The sentences.</summary>
    public static IEnumerable<string> Of(FairnessReport report)
    {
        yield return "Verdicts were made without condition and group; whether exclusions are even was looked at afterwards.";
        FairnessComparison[] uneven = [.. report.Comparisons.Where(one => one.Answer == FairnessAnswer.StandsOut)];
        yield return FormattableString.Invariant($"Of {report.Comparisons.Length} comparisons ({report.Tested} with a test, not corrected for their number)")
            + FormattableString.Invariant($" {uneven.Length} stood out (p below 0.05, or shares ten points and more apart)")
            + FormattableString.Invariant($" and {report.CountOf(FairnessAnswer.NotAssessed)} could not be assessed.");
        if (uneven.Length > 0)
        {
            yield return $"Standing out: {string.Join("; ", uneven.Take(MostNamed).Select(one => MarkdownText.Escape(FairnessWords.Of(one))))}.";
        }

        if (uneven.Length > MostNamed)
        {
            yield return FormattableString.Invariant($"{uneven.Length - MostNamed} more are in `{FairnessTsv.FileName}`.");
        }

        if (report.Tested > 0)
        {
            yield return "Tests exchange labels within or among participants, or are Fisher's exact test where each participant is one unit;"
                + " single trials were never taken for independent.";
        }
    }
}
