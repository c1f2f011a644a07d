using System.Collections.Immutable;
using ChannelAudit.Segments;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>The decision in 24 s of the recording; spans start every 8 s.</summary>
/// <param name="FromS">Start in seconds.</param>
/// <param name="ToS">End in seconds.</param>
/// <param name="Medians">The span's medians.</param>
/// <param name="Decision">What they decide.</param>
internal sealed record BridgeSpan(double FromS, double ToS, BridgeMedians Medians, BridgeDecision Decision)
{
    private const double LengthS = 24;
    private const double EveryS = 8;

    /// <summary>The spans of a pair; none for a recording of 24 s or less.</summary>
    public static ImmutableArray<BridgeSpan> Of(
        PairSurvey pair, int segmentLength, Func<(long From, long To), (BridgeMedians Medians, BridgeDecision Decision)> decide)
    {
        if (pair.SegmentsA.Count == 0)
        {
            return [];
        }

        double rate = pair.ChannelA.Rate.Value;
        long end = pair.SegmentsA.Starts[^1] + segmentLength;
        ImmutableArray<BridgeSpan>.Builder spans = ImmutableArray.CreateBuilder<BridgeSpan>();
        for (int i = 0; ((i * EveryS) + LengthS) * rate <= end; i++)
        {
            double fromS = i * EveryS;
            (BridgeMedians medians, BridgeDecision decision) = decide(((long)(fromS * rate), (long)((fromS + LengthS) * rate)));
            spans.Add(new BridgeSpan(fromS, fromS + LengthS, medians, decision));
        }

        return spans.DrainToImmutable();
    }

    /// <summary>The longest run of neighbouring spans of at least a grade.</summary>
    public static int LongestRun(ImmutableArray<BridgeSpan> spans, Grade grade)
    {
        int longest = 0;
        int run = 0;
        foreach (BridgeSpan span in spans)
        {
            run = span.Decision.Grade >= grade ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }

    /// <summary>The median grade of the spans that contain a trial (the milder of two middle ones); null when none does.</summary>
    public static Grade? MedianAround(ImmutableArray<BridgeSpan> spans, Trial trial)
    {
        double from = (double)trial.WindowFromS;
        double to = (double)trial.WindowToS;
        Grade[] grades = [.. spans.Where(span => span.FromS <= from && to <= span.ToS).Select(span => span.Decision.Grade).Order()];
        return grades.Length == 0 ? null : grades[(grades.Length - 1) / 2];
    }
}
