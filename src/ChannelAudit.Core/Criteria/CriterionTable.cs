using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Toml;

namespace ChannelAudit.Criteria;

/// <summary>The table of one reason code in a criteria file.</summary>
internal static class CriterionTable
{
    /// <summary>Keys of every table.</summary>
    public static ImmutableArray<TomlKey> Keys { get; } =
    [
        new("questionable", "questionable = [{ line_rms = 1.0, line_ratio = -10.0 }]", "alternatives that make a trial questionable"),
        new("reject", "reject = [{ line_rms = 5.0, line_ratio = 0.0 }]", "alternatives that reject a trial"),
        new("channel_questionable", "channel_questionable = [{ clipped = 0.01 }]", "alternatives that make the channel questionable"),
        new("channel_reject", "channel_reject = [{ clipped = 1.0 }]", "alternatives that reject the channel"),
        new("source", "source = \"pilot study of our lab\"", "where the limits come from"),
    ];

    /// <summary>The default with what the table changes.</summary>
    public static Criterion Apply(TomlNode table, Criterion standard, string fileName)
    {
        var section = new TomlSection(table, $"[{standard.Reason}]", fileName, Keys);
        ImmutableArray<CriterionLevel> levels = CriterionLevel.Of(standard.Reason);
        Criterion criterion = standard;
        foreach (CriterionLevel level in CriterionLevel.All)
        {
            if (section.Find(level.Key) is not { } node)
            {
                continue;
            }

            if (!levels.Contains(level))
            {
                throw CriteriaErrors.LevelWithoutUse(section, level.Key, standard.Reason, levels.Select(known => known.Key));
            }

            criterion = level.With(criterion, Sets(section, level.Key, node, standard.Reason));
        }

        criterion = Follow(section, criterion, standard, CriterionLevel.Questionable, CriterionLevel.ChannelQuestionable);
        criterion = Follow(section, criterion, standard, CriterionLevel.Reject, CriterionLevel.ChannelReject);
        RefuseWrongOrder(section, criterion, CriterionLevel.Questionable, CriterionLevel.Reject);
        RefuseWrongOrder(section, criterion, CriterionLevel.ChannelQuestionable, CriterionLevel.ChannelReject);
        return criterion with { Source = Source(section, criterion, standard, fileName) };
    }

    // Where the defaults judge trial and channel alike, a lab's own limit for trials is meant for the channel too, unless the file says otherwise.
    private static Criterion Follow(
        TomlSection section, Criterion criterion, Criterion standard, CriterionLevel ofTrials, CriterionLevel ofChannel)
    {
        bool isAlike = string.Equals(
            CriteriaText.Sets(ofTrials.Get(standard)), CriteriaText.Sets(ofChannel.Get(standard)), StringComparison.Ordinal);
        return isAlike && section.Find(ofTrials.Key) is not null && section.Find(ofChannel.Key) is null
            ? ofChannel.With(criterion, ofTrials.Get(criterion))
            : criterion;
    }

    // A limit of one's own must not go out under the source of the default.
    private static string Source(TomlSection section, Criterion criterion, Criterion standard, string fileName)
    {
        if (section.Text("source") is { } given)
        {
            return given;
        }

        bool isChanged = CriterionLevel.All.Any(level =>
            !string.Equals(CriteriaText.Sets(level.Get(criterion)), CriteriaText.Sets(level.Get(standard)), StringComparison.Ordinal));
        return isChanged ? $"not given in {fileName}" : standard.Source;
    }

    private static void RefuseWrongOrder(TomlSection section, Criterion criterion, CriterionLevel questionable, CriterionLevel reject)
    {
        if (LimitOrder.FirstFault(questionable.Get(criterion), reject.Get(criterion)) is { } fault)
        {
            throw CriteriaErrors.WrongOrder(section, reject.Key, fault);
        }
    }

    private static ImmutableArray<LimitSet> Sets(TomlSection section, string key, TomlNode node, string reason)
    {
        string[] measures = [.. MeasureCatalog.OfChannels.Concat(MeasureCatalog.OfDecisions)
            .Where(measure => measure.Serves(reason)).Select(measure => measure.Name)];
        if (node.Kind != TomlKind.List || node.Items.Any(item => item.Kind != TomlKind.Table))
        {
            throw CriteriaErrors.NotAListOfTables(section, key, $"{measures[0]} = 1.0");
        }

        if (node.Items.Any(item => item.Entries.Count == 0))
        {
            throw CriteriaErrors.EmptyAlternative(section, key);
        }

        // In the catalog's order, whatever the file's: the same limits have the same hash.
        return [.. node.Items.Select(item => new LimitSet(
        [
            .. item.Entries.Select(entry => ReadLimit(section, entry.Key, entry.Value, measures))
                .OrderBy(limit => Array.IndexOf(measures, limit.Measure)),
        ]))];
    }

    private static Limit ReadLimit(TomlSection section, string name, TomlNode node, string[] measures)
    {
        if (!MeasureCatalog.Contains(name))
        {
            throw CriteriaErrors.UnknownMeasure(section, node.Line, name, measures);
        }

        if (!measures.Contains(name, StringComparer.Ordinal))
        {
            throw CriteriaErrors.ForeignMeasure(section, node.Line, name, measures);
        }

        if (!node.IsNumber)
        {
            throw CriteriaErrors.NotANumber(section, node, name);
        }

        MeasureDefinition measure = MeasureCatalog.Get(name);
        return LimitRange.Contains(measure, node.Number)
            ? new Limit(name, node.Number + 0.0) // -0.0 becomes 0.0
            : throw CriteriaErrors.SenselessLimit(section, node, measure);
    }
}
