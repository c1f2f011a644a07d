using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Counts what lies at a rail: within one step of it, as the measure says (methods 1.3).</summary>
internal static class RailCount
{
    /// <summary>Share and longest run within a fault's stretch, with the trials that have such samples.</summary>
    internal static ImmutableArray<Truth> Truths(MadeRecording made, Fault fault, string site, int lowest, int highest)
    {
        SessionPlan plan = made.Plan;
        SampleSpan span = plan.SamplesOf(fault.Span);
        ReadOnlySpan<int> codes = made.CodesOf(site);
        (int count, int run) = In(codes[span.From..span.To], lowest, highest);
        List<int> trials = [];
        foreach (int number in plan.TrialsIn(fault.Span))
        {
            SampleSpan trial = plan.SamplesOf(FaultSpan.Of(plan.Trials[number - 1]));
            int from = Math.Max(span.From, trial.From);
            int to = Math.Min(span.To, trial.To);
            if (from < to && In(codes[from..to], lowest, highest).Count > 0)
            {
                trials.Add(number);
            }
        }

        double share = span.Length == 0 ? 0 : 100.0 * count / span.Length;
        return
        [
            new Truth(ReasonCode.Clipping, [site], "clipped", share, "%", fault.Span, [.. trials]),
            new Truth(ReasonCode.Clipping, [site], "clipped_run", 1000 * run / plan.Rate.Value, "ms", fault.Span, [.. trials]),
        ];
    }

    private static (int Count, int LongestRun) In(ReadOnlySpan<int> codes, int lowest, int highest)
    {
        int count = 0;
        int run = 0;
        int longest = 0;
        foreach (int code in codes)
        {
            bool atRail = code >= highest - 1 || (lowest != int.MinValue && code <= lowest + 1);
            run = atRail ? run + 1 : 0;
            count += atRail ? 1 : 0;
            longest = Math.Max(longest, run);
        }

        return (count, longest);
    }
}
