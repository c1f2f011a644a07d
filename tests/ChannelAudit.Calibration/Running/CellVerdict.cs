using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Calibration.Running;

/// <summary>How a trial-channel was graded for some reasons.</summary>
internal static class CellVerdict
{
    /// <summary>The worst grade for one of the reasons; pass when none of them is named.</summary>
    /// <remarks>
    /// A finding of a pair or of the whole channel is carried by the cell as a reason: reasons stand worst first, so the first one has the cell's grade; any
    /// other has that of the channel's finding, no more than the cell's.
    /// </remarks>
    public static Grade For(ChannelResult channel, CellResult cell, IReadOnlyCollection<string> reasons)
    {
        Grade own = cell.Findings.Where(finding => reasons.Contains(finding.Reason, StringComparer.Ordinal)).Select(finding => finding.Grade).DefaultIfEmpty(Grade.Pass).Max();
        if (own > Grade.Pass)
        {
            return own;
        }

        bool isFirst = !cell.Reasons.IsEmpty && reasons.Contains(cell.Reasons[0], StringComparer.Ordinal);
        bool isNamed = cell.Reasons.Any(reason => reasons.Contains(reason, StringComparer.Ordinal));
        Grade ofChannel = channel.Findings.Where(finding => reasons.Contains(finding.Reason, StringComparer.Ordinal)).Select(finding => finding.Grade).DefaultIfEmpty(Grade.Questionable).Max();
        return isFirst ? cell.Verdict : isNamed ? (Grade)Math.Min((int)ofChannel, (int)cell.Verdict) : Grade.Pass;
    }
}
