using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Views;

/// <summary>Gathers what pictures of suspect pairs need, in one more pass over their two channels.</summary>
internal static class PairViewer
{
    /// <summary>Pairs that get a picture, the worst first; a recording whose channels are all one has thousands.</summary>
    private const int MostPairs = 12;

    private const double MomentS = 0.3;
    private const int MomentColumns = 1500;
    private const int LeastSegments = 3;

    /// <summary>The pairs, the suspect ones with their views.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="survey">Its survey.</param>
    /// <param name="pairs">The pairs, in the survey's order.</param>
    /// <param name="judgements">What was decided about each.</param>
    /// <param name="statesOf">The states of a pair's segments.</param>
    /// <param name="cancellation">Checked often.</param>
    public static ImmutableArray<PairResult> AddTo(
        Recording recording,
        RecordingSurvey survey,
        ImmutableArray<PairResult> pairs,
        ImmutableArray<PairJudgement> judgements,
        Func<int, PairStates?> statesOf,
        CancellationToken cancellation)
    {
        HashSet<int> shown =
        [
            .. Enumerable.Range(0, pairs.Length)
                .Where(i => judgements[i].IsSuspect && statesOf(i) is not null)
                .OrderByDescending(i => judgements[i].Finding?.Grade ?? Grade.Pass)
                .ThenByDescending(i => Math.Abs(pairs[i].Evidence.RhoHighRest ?? pairs[i].Evidence.RhoRest ?? 0))
                .Take(MostPairs),
        ];
        return [.. pairs.Select((pair, i) => shown.Contains(i)
            ? pair with { View = Of(recording, survey, survey.Pairs[i], judgements[i], statesOf(i)!, cancellation) }
            : pair)];
    }

    private static PairView Of(
        Recording recording, RecordingSurvey survey, PairSurvey pair, PairJudgement judgement, PairStates states, CancellationToken cancellation)
    {
        SpectralFrame frame = survey.Channels[pair.A].Frame;
        Finding? finding = judgement.Finding;
        bool isPart = finding is not null && judgement.Deciding != judgement.Evidence;
        ImmutableArray<PairState> stateOfSegments = StatesOf(pair.SegmentsA.Count, states);
        PairStates shown = isPart ? states.Between(pair.SegmentsA.Starts, (long)(finding!.FromS * frame.RateHz), (long)(finding.ToS * frame.RateHz) - frame.SegmentLength) : states;
        StateMeans[] means = [Means(pair, frame, shown.Rest), Means(pair, frame, shown.ActiveA), Means(pair, frame, shown.ActiveB)];
        SegmentWalk walk = new(recording.Samples, [pair.ChannelA, pair.ChannelB], frame);
        int first = 0;
        walk.Visit(
            [pair.ChannelA.Stretches, pair.ChannelB.Stretches],
            _ => Array.ForEach(means, mean => mean.Add(walk.Batch, first)),
            cancellation,
            (number, count) =>
            {
                first = number;
                return Array.Exists(means, mean => mean.Wants(number, count));
            });
        return new PairView
        {
            Grade = finding?.Grade ?? Grade.Pass,
            Stretch = finding is null ? (0, recording.DurationS) : (finding.FromS, finding.ToS),
            IsPart = isPart,
            Medians = judgement.Deciding,
            IsCommonSource = judgement.IsCommonSource,
            Seconds = [.. pair.SegmentsA.Starts.Select((start, i) =>
                new PairSecond((start + (frame.SegmentLength / 2.0)) / frame.RateHz, pair.Table!.Rho[i], stateOfSegments[i]))],
            Rest = means[0].Coherence(walk.Batch),
            ActiveA = means[1].Coherence(walk.Batch),
            ActiveB = means[2].Coherence(walk.Batch),
            Moment = MomentOf(recording, frame, pair, shown, stateOfSegments, cancellation),
            Limits = judgement.Limits,
        };
    }

    private static StateMeans Means(PairSurvey pair, SpectralFrame frame, ImmutableArray<int> segments) =>
        new(pair.Table!.Bands, 0, 1, frame.Bins, segments, pair.SegmentsA.Count);

    private static ImmutableArray<PairState> StatesOf(int segments, PairStates states)
    {
        PairState[] all = new PairState[segments];
        foreach (int segment in states.Rest)
        {
            all[segment] = PairState.Rest;
        }

        foreach (int segment in states.ActiveA)
        {
            all[segment] = PairState.ActiveA;
        }

        foreach (int segment in states.ActiveB)
        {
            all[segment] = all[segment] == PairState.ActiveA ? PairState.ActiveBoth : PairState.ActiveB;
        }

        return [.. all];
    }

    // The contraction of the site that is seen more at the other, in its median second: neither the best nor the worst case.
    private static PairMoment? MomentOf(
        Recording recording, SpectralFrame frame, PairSurvey pair, PairStates states, ImmutableArray<PairState> stateOfSegments, CancellationToken cancellation)
    {
        Column<float> rho = pair.Table!.Rho;
        ImmutableArray<int> chosen = new[] { states.ActiveA, states.ActiveB }
            .Where(segments => segments.Length >= LeastSegments)
            .OrderByDescending(segments => Math.Abs(rho[Middle(segments, rho)]))
            .FirstOrDefault(states.Rest);
        if (chosen.IsEmpty)
        {
            return null;
        }

        int segment = Middle(chosen, rho);
        long middle = pair.SegmentsA.Starts[segment] + (frame.SegmentLength / 2);
        long half = (long)(MomentS * frame.RateHz / 2);
        return new PairMoment(
            stateOfSegments[segment],
            Read(recording, pair.ChannelA, middle - half, middle + half, frame.RateHz, cancellation),
            Read(recording, pair.ChannelB, middle - half, middle + half, frame.RateHz, cancellation));
    }

    private static int Middle(ImmutableArray<int> segments, Column<float> rho) =>
        segments.OrderBy(segment => rho[segment]).ThenBy(segment => segment).ElementAt(segments.Length / 2);

    private static Trace Read(Recording recording, Channel channel, long start, long end, double rateHz, CancellationToken cancellation)
    {
        TraceBuilder trace = new(start, end, MomentColumns);
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, Window.Of(channel.Stretches, start, end).Pieces, cancellation))
        {
            trace.Add(block.Samples.Span, block.Start);
        }

        return trace.Finish(rateHz);
    }
}
