using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Excerpts;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Bundles;

/// <summary>Every exclusion of the audit in a bundle, checked against its samples.</summary>
/// <param name="bundle">The bundle.</param>
/// <param name="index">Its index.</param>
/// <param name="audit">The audit out of it, with the decisions beside it.</param>
/// <param name="criteria">The limits in force.</param>
public sealed class BundleExclusions(BundleFile bundle, BundleIndex index, StoredAudit audit, AuditCriteria criteria)
{
    private readonly Dictionary<(string Recording, string Channel, int Trial), BundleBlock> _blocks = index.Blocks
        .GroupBy(block => (block.Recording, block.Channel, block.Trial))
        .ToDictionary(group => group.Key, group => group.First());

    private readonly HashSet<BundleOmission> _omitted = [.. index.Omitted];

    /// <summary>Checks all of them, recording by recording.</summary>
    /// <exception cref="ChannelAuditException">When a result in the bundle is missing or damaged, or samples are not where they could be.</exception>
    public IEnumerable<ExclusionOutcome> Check(CancellationToken cancel)
    {
        foreach (StoredRecording recording in audit.Recordings)
        {
            RecordingResult result = audit.ResultOf(recording);
            BundleResults.Require(result, bundle.FilePath, BundleIndex.AuditFolder + AuditWriter.Place(recording.Id, RecordingContent.ResultName));
            ImmutableArray<ChannelFacts>? facts = index.Recordings.FirstOrDefault(one => string.Equals(one.Id, recording.Id, StringComparison.Ordinal))?.Channels;
            ExclusionCheck check = new(
                result, criteria, facts, (channel, trial) => ExcerptOf(result, facts, channel, trial), (channel, trial) => _omitted.Contains(new BundleOmission(recording.Id, channel, trial)));
            foreach (Exclusion exclusion in Exclusion.Of(result, index.Least))
            {
                cancel.ThrowIfCancellationRequested();
                yield return check.Of(exclusion, cancel);
            }
        }
    }

    /// <summary>Whether the index lists just the exclusions that results and decisions give.</summary>
    public AuditCheck Listed(IReadOnlyList<ExclusionOutcome> outcomes)
    {
        ArgumentNullException.ThrowIfNull(outcomes);
        string[] given = [.. outcomes.Select(outcome => Words(outcome.Exclusion))];
        string[] listed = [.. index.Exclusions.Select(Words)];
        string[] faults =
        [
            .. given.Except(listed, StringComparer.Ordinal).Select(one => $"{one} is left out in the audit and not listed"),
            .. listed.Except(given, StringComparer.Ordinal).Select(one => $"{one} is listed and not left out in the audit"),
        ];
        return faults.Length == 0
            ? new AuditCheck("list", CheckState.Ok, FormattableString.Invariant($"{listed.Length} exclusions, those that results and decisions give"))
            : new AuditCheck("list", CheckState.Differs, string.Join("; ", faults.Take(5)) + (faults.Length > 5 ? FormattableString.Invariant($"; and {faults.Length - 5} more") : string.Empty));
    }

    private Excerpt? ExcerptOf(RecordingResult result, ImmutableArray<ChannelFacts>? facts, string channel, int trial)
    {
        if (!_blocks.TryGetValue((result.Id, channel, trial), out BundleBlock? block)
            || facts?.FirstOrDefault(one => string.Equals(one.Name, channel, StringComparison.Ordinal)) is not { } own
            || result.Trials.FirstOrDefault(one => one.Number == trial) is not { } around)
        {
            return null;
        }

        RequireInside(block, own, around);
        if (bundle.Samples(block.Path) is not { } samples)
        {
            return null;
        }

        Excerpt excerpt = new(block.Pieces, samples);
        return excerpt.IsConsistent && Array.TrueForAll(samples, double.IsFinite) ? excerpt : null;
    }

    // What is measured is bounded by window and rate, whatever the index claims.
    private void RequireInside(BundleBlock block, ChannelFacts own, Trial around)
    {
        BundleSpan span = BundleSpan.Of(around);
        (long first, long end) = (own.Rate.IndexAt(span.FromS), own.Rate.IndexAt(span.ToS));
        if (block.Pieces.Any(piece => piece.Length is <= 0 or > BundleLimits.LargestEntry || piece.Start < first || piece.Start > end - piece.Length))
        {
            throw BundleErrors.Refused(bundle.FilePath, block.Path, "samples that lie outside of their window");
        }
    }

    private static string Words(Exclusion exclusion) => BundleText.Name(exclusion)
        + $" ({Wording.VerdictWords.Code(exclusion.Computed)}, final {Wording.VerdictWords.Code(exclusion.Final)}: {OneLine.List(exclusion.Reasons)})";
}
