using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Judges all pairs of a recording: bridged, suspected, or neither, from when to when.</summary>
public sealed class BridgeJudge
{
    private const double FadedShare = 0.25;
    private const int LeastSuspectWindows = 3;

    private readonly RecordingSurvey survey;
    private readonly ImmutableArray<PairStates?> states;
    private readonly ImmutableArray<BridgeMedians?> medians;
    private readonly Dictionary<(int Pair, long From, long To, bool MostAlone), BridgeMedians> known = [];

    /// <summary>Prepares to judge the pairs of a recording, by any limits.</summary>
    public BridgeJudge(RecordingSurvey survey)
    {
        this.survey = survey;
        states = [.. survey.Pairs.Select(pair => pair.NotComparable is null ? PairStates.Of(pair) : null)];
        medians = [.. survey.Pairs.Select((pair, i) => MediansOf(pair, i, 0, long.MaxValue / 2))];
    }

    /// <summary>The states of a pair's segments; null when it cannot be compared.</summary>
    public PairStates? StatesOf(int pair) => states[pair];

    /// <summary>Judges one pair.</summary>
    /// <param name="index">Position among the survey's pairs.</param>
    /// <param name="trials">The trials.</param>
    /// <param name="readings">The pair's reading in each trial, null where there is none.</param>
    /// <param name="criterion">The limits.</param>
    public PairJudgement Judge(int index, ImmutableArray<Trial> trials, ImmutableArray<PairReading?> readings, Criterion criterion)
    {
        PairSurvey pair = survey.Pairs[index];
        if (medians[index] is not { } alone || pair.Table is null)
        {
            return BridgeWords.NotComparable(pair, trials.Length);
        }

        bool isShared = IsShared(index);
        (BridgeMedians whole, BridgeDecision decision) = DecideWhole(index, alone, isShared, criterion);
        ImmutableArray<BridgeSpan> spans = BridgeSpan.Of(pair, Length(pair), span => DecideSpan(index, span, isShared, criterion));
        ImmutableArray<Grade> grades = GradeTrials(whole, decision, spans, trials, readings);
        return BridgeWords.Judgement(
            new BridgeCase(pair, survey.Channels[pair.A].Name, survey.Channels[pair.B].Name, whole, decision, spans, LimitsOf(pair.Table.Bands, whole, criterion), isShared)
            {
                ElectrodesA = survey.Channels[pair.A].Site?.Electrodes ?? [],
                ElectrodesB = survey.Channels[pair.B].Site?.Electrodes ?? [],
            },
            trials,
            grades);
    }

    /// <summary>What all channels share alike, or null; where two are joined for certain, nothing is said.</summary>
    /// <param name="pairs">What was judged about the pairs.</param>
    public Finding? CommonSource(ImmutableArray<PairJudgement> pairs) => pairs.Any(pair => pair.Finding is { Grade: Grade.Reject }) || survey.Pairs.IsEmpty
        ? null
        : SharedByAll.Of(
            [.. survey.Channels.Select(channel => channel.Name)],
            (a, b) => survey.IndexOfPair(a, b) is >= 0 and int index ? medians[index] : null,
            survey.Pairs[0].ChannelA.TimelineLength / survey.Pairs[0].ChannelA.Rate.Value);

    private static int Length(PairSurvey pair) => SpectralFrame.SegmentLengthOf(pair.ChannelA.Rate);

    private static ImmutableArray<Grade> GradeTrials(
        BridgeMedians whole,
        BridgeDecision decision,
        ImmutableArray<BridgeSpan> spans,
        ImmutableArray<Trial> trials,
        ImmutableArray<PairReading?> readings)
    {
        bool bridged = decision.Grade == Grade.Reject || spans.Any(span => span.Decision.Grade == Grade.Reject);
        if (bridged)
        {
            return [.. trials.Select((trial, i) => BridgedTrial(trial, readings[i], spans, decision.Grade))];
        }

        bool suspectedInPart = decision.Grade == Grade.Pass && BridgeSpan.LongestRun(spans, Grade.Questionable) >= LeastSuspectWindows;
        if (decision.Grade == Grade.Pass && !suspectedInPart)
        {
            return [.. trials.Select(_ => Grade.Pass)];
        }

        bool fades = spans.Any(span => span.Medians.RhoHighRest is { } high && Math.Abs(high) < FadedShare * Math.Abs(whole.RhoHighRest ?? 0));
        return fades || suspectedInPart
            ? [.. trials.Select(trial => BridgeSpan.MedianAround(spans, trial) ?? decision.Grade)]
            : [.. trials.Select(_ => decision.Grade)];
    }

    /// <summary>
    /// Once "bridged" holds somewhere, a trial's own correlation says whether it lasts, and its weaker gain that it is not a contraction seen
    /// through tissue; what lies between is questionable; a trial too short for them goes by the spans.
    /// </summary>
    private static Grade BridgedTrial(Trial trial, PairReading? reading, ImmutableArray<BridgeSpan> spans, Grade whole) =>
        reading is { } own
            ? JoinedTime.GradeOf(own.Rho, own.GainAb, own.GainBa)
            : BridgeSpan.MedianAround(spans, trial) ?? whole;

    private static ImmutableArray<BridgeLimit> LimitsOf(PairBands bands, BridgeMedians whole, Criterion criterion) =>
        BridgeLimit.Of(criterion, bands, bands.HasHigh && whole.RestSeconds > 0 ? BridgeDecision.LeastHigh(whole, bands) : 0);

    private BridgeMedians? MediansOf(PairSurvey pair, int index, long from, long to, bool mostAlone = true)
    {
        if (states[index] is not { } own || pair.Table is null)
        {
            return null;
        }

        // Limits that are moved ask for the same stretches again.
        (int, long, long, bool) place = (index, from, to, mostAlone);
        if (known.TryGetValue(place, out BridgeMedians? before))
        {
            return before;
        }

        PairStates inside = own.Between(pair.SegmentsA.Starts, from, to - Length(pair));
        BridgeMedians found = BridgeMedians.Of(pair, inside, mostAlone);

        // Where rest shows the joint too, contractions that all sites see do not excuse it: three sites can be joined.
        return known[place] = found with
        {
            IsActiveShared = Math.Abs(found.RhoRest ?? 0) < BridgeDecision.BeyondTissue
                && SharedContractions.Of(survey, index, inside),
        };
    }

    // A bridge of a part of the session can hide in the medians of the contractions that are most alone, and a whole one in those of all.
    private (BridgeMedians Medians, BridgeDecision Decision) DecideWhole(int index, BridgeMedians alone, bool isShared, Criterion criterion)
    {
        PairSurvey pair = survey.Pairs[index];
        BridgeMedians all = MediansOf(pair, index, 0, long.MaxValue / 2, mostAlone: false)!;
        BridgeDecision ofAlone = BridgeDecision.Of(alone, pair.Table!.Bands, criterion, isShared);
        BridgeDecision ofAll = BridgeDecision.Of(all, pair.Table.Bands, criterion, isShared);
        return ofAll.Grade > ofAlone.Grade ? (all, ofAll) : (alone, ofAlone);
    }

    private (BridgeMedians Medians, BridgeDecision Decision) DecideSpan(int index, (long From, long To) span, bool isShared, Criterion criterion)
    {
        PairSurvey pair = survey.Pairs[index];
        BridgeMedians own = MediansOf(pair, index, span.From, span.To)!;
        return (own, BridgeDecision.Of(own, pair.Table!.Bands, criterion, isShared));
    }

    /// <summary>
    /// Whether every third channel shares the high band at rest with both alike, at least half as strongly: then the cause is common
    /// (ground, remote source), not gel.
    /// </summary>
    private bool IsShared(int index)
    {
        PairSurvey pair = survey.Pairs[index];
        double own = Math.Abs(medians[index]?.RhoHighRest ?? 0);
        bool anyThird = false;
        for (int third = 0; third < survey.Channels.Length; third++)
        {
            if (third == pair.A || third == pair.B || PlaceOf(pair.A, third) < 0 || PlaceOf(pair.B, third) < 0)
            {
                continue;
            }

            anyThird = true;
            if (HighOf(pair.A, third) < 0.5 * own || HighOf(pair.B, third) < 0.5 * own)
            {
                return false;
            }
        }

        return anyThird;
    }

    private double HighOf(int a, int b) =>
        Math.Abs(medians[PlaceOf(a, b)]?.RhoHighRest ?? 0);

    private int PlaceOf(int a, int b) => survey.IndexOfPair(Math.Min(a, b), Math.Max(a, b));
}
