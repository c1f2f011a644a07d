using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Excerpts;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Results;
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

    /// <summary>Checks all of them, recording by recording.</summary>
    /// <exception cref="ChannelAuditException">When a result in the bundle is missing or damaged.</exception>
    public IEnumerable<ExclusionOutcome> Check(CancellationToken cancel)
    {
        foreach (StoredRecording recording in audit.Recordings)
        {
            RecordingResult result = audit.ResultOf(recording);
            ImmutableArray<ChannelFacts>? facts = index.Recordings.FirstOrDefault(one => string.Equals(one.Id, recording.Id, StringComparison.Ordinal))?.Channels;
            ExclusionCheck check = new(result, criteria, facts, (channel, trial) => ExcerptOf(recording.Id, channel, trial));
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

    private Excerpt? ExcerptOf(string recording, string channel, int trial)
    {
        if (!_blocks.TryGetValue((recording, channel, trial), out BundleBlock? block) || bundle.Samples(block.Path) is not { } samples)
        {
            return null;
        }

        Excerpt excerpt = new(block.Pieces, samples);
        return excerpt.IsConsistent && Array.TrueForAll(samples, double.IsFinite) ? excerpt : null;
    }

    private static string Words(Exclusion exclusion) => BundleText.Name(exclusion)
        + $" ({Wording.VerdictWords.Code(exclusion.Computed)}, final {Wording.VerdictWords.Code(exclusion.Final)}: {OneLine.List(exclusion.Reasons)})";
}
