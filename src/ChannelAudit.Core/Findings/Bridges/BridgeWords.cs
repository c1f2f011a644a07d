using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Puts a pair's decision into findings and words.</summary>
internal static class BridgeWords
{
    private const double CrosstalkRho = 0.5;

    /// <summary>Two channels that cannot be compared.</summary>
    public static PairJudgement NotComparable(PairSurvey pair, int trials) => new()
    {
        A = pair.A,
        B = pair.B,
        Evidence = new BridgeEvidence
        {
            NotAssessed = pair.NotComparable,
            Decision = "not assessed: " + pair.NotComparable,
            Why = $"It could not be judged: {pair.NotComparable}.",
        },
        Trials = [.. Enumerable.Repeat(Grade.Pass, trials)],
    };

    /// <summary>The judgement of a pair.</summary>
    public static PairJudgement Judgement(BridgeCase found, ImmutableArray<Trial> trials, ImmutableArray<Grade> grades)
    {
        Grade worst = grades.Append(found.Decision.Grade).Max();
        int bridgedTrials = grades.Count(grade => grade == Grade.Reject);
        bool mostly = found.Decision.Grade == Grade.Reject || 2 * bridgedTrials > trials.Length;
        Grade channelGrade = worst == Grade.Reject && !mostly ? Grade.Questionable : worst;
        string? notAssessed = worst == Grade.Reject ? null : Missing(found);
        return new PairJudgement
        {
            A = found.Pair.A,
            B = found.Pair.B,
            Evidence = EvidenceOf(found, found.Whole, notAssessed, worst),
            Deciding = EvidenceOf(found, found.Deciding(worst).Medians, notAssessed, worst),
            Finding = worst == Grade.Pass ? null : FindingOf(found, worst, trials, grades),
            ChannelGrade = channelGrade,
            Trials = grades,
            Information = worst == Grade.Pass ? Crosstalk(found) : null,
            Limits = found.Limits,
            IsCommonSource = found.IsCommonSource,
        };
    }

    private static BridgeEvidence EvidenceOf(BridgeCase found, BridgeMedians medians, string? notAssessed, Grade worst) => new()
    {
        RestSegments = medians.RestSegments,
        ActiveASegments = medians.ActiveASegments,
        ActiveBSegments = medians.ActiveBSegments,
        RhoRest = medians.RhoRest,
        RhoHighRest = medians.RhoHighRest,
        ImaginaryRest = medians.ImaginaryRest,
        RhoActiveA = medians.RhoActiveA,
        RhoActiveB = medians.RhoActiveB,
        GainAb = medians.GainAb,
        GainBa = medians.GainBa,
        NotAssessed = notAssessed,
        Decision = Decided(found, worst, notAssessed),
        Why = BridgeReasoning.Of(found, worst, notAssessed),
        Electrodes = worst == Grade.Pass ? null : LikelyJoint.Of(found, found.Deciding(worst).Medians),
    };

    private static string Decided(BridgeCase found, Grade worst, string? notAssessed) => worst switch
    {
        Grade.Reject => "bridged",
        Grade.Questionable => "suspected shared electrode path",
        _ when notAssessed is not null => "not assessed: " + notAssessed,
        _ when found.IsCommonSource => "all pairs share it alike: a common source, not gel",
        _ => "no shared electrode path seen; a single joined electrode behind quiet contacts cannot be ruled out",
    };

    /// <summary>What is missing to judge a bridge, or null.</summary>
    private static string? Missing(BridgeCase found)
    {
        bool hasRest = found.Whole.RestSeconds >= 4;
        bool hasBoth = found.Whole.RhoActive is not null && !found.Whole.IsActiveShared;
        if (!hasRest && !hasBoth)
        {
            return found.Whole.IsActiveShared
                ? "less than 4 s with both sites quiet, and contractions that every site sees"
                : "less than 4 s with both sites quiet, and no contraction of each";
        }

        return found.Pair.Table!.Bands.HasHigh || hasBoth
            ? hasRest ? null : "less than 4 s with both sites quiet"
            : "the band 300 to 450 Hz, which tells a joined electrode from crosstalk, is not in the recording";
    }

    private static Finding FindingOf(BridgeCase found, Grade worst, ImmutableArray<Trial> trials, ImmutableArray<Grade> grades)
    {
        (double fromS, double toS) = Stretch(found, worst, trials, grades);
        (BridgeMedians medians, BridgeDecision decision) = found.Deciding(worst);
        bool isReject = worst == Grade.Reject;
        return new Finding
        {
            Reason = ReasonCode.Bridge,
            Grade = worst,
            Channels = [found.NameA, found.NameB],
            FromS = fromS,
            ToS = toS,
            Evidence = decision.Evidence,
            Text = string.Create(
                CultureInfo.InvariantCulture,
                $"{found.NameA} and {found.NameB} {(isReject ? "carry one signal" : "share signal")} ({Numbers(found.Whole)}); {LikelyJoint.Of(found, medians)}"),
            Cause = isReject
                ? "gel has joined the two sites, or the two channels are one"
                : "an electrode of each may be joined by gel; a reading across the sites, new gel, or each muscle moved alone would settle it",
        };
    }

    private static string Numbers(BridgeMedians whole)
    {
        List<string> parts = [];
        Add(parts, "rest", whole.RhoRest);
        Add(parts, "rest above 300 Hz", whole.RhoHighRest);
        Add(parts, "contractions", whole.RhoActive);
        return parts.Count == 0 ? "in part of the recording" : "correlation " + string.Join(", ", parts);
    }

    private static void Add(List<string> parts, string what, double? value)
    {
        if (value is { } number)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{what} {number:0.00}"));
        }
    }

    private static (double FromS, double ToS) Stretch(BridgeCase found, Grade worst, ImmutableArray<Trial> trials, ImmutableArray<Grade> grades)
    {
        double end = found.Pair.ChannelA.TimelineLength / found.Pair.ChannelA.Rate.Value;
        if (grades.All(grade => grade == worst) || found.Spans.IsEmpty)
        {
            return (0, end);
        }

        (double From, double To)[] spans = [.. found.Spans.Where(span => span.Decision.Grade == worst).Select(span => (span.FromS, span.ToS))];
        (double From, double To)[] ofTrials =
            [.. trials.Where((_, i) => grades[i] == worst).Select(trial => ((double)trial.WindowFromS, (double)trial.WindowToS))];
        (double From, double To)[] parts = [.. spans, .. ofTrials];
        if (parts.Length == 0)
        {
            return (0, end);
        }

        // Spans are 24 s long; what is bridged is known to the second.
        return worst == Grade.Reject && JoinedTime.Within(found.Pair, parts.Min(part => part.From), parts.Max(part => part.To), end) is { } joined
            ? (ofTrials.Select(part => part.From).Append(joined.FromS).Min(), Math.Min(end, ofTrials.Select(part => part.To).Append(joined.ToS).Max()))
            : (parts.Min(part => part.From), Math.Min(end, parts.Max(part => part.To)));
    }

    private static Finding? Crosstalk(BridgeCase found)
    {
        double a = Math.Abs(found.Whole.RhoActiveA ?? 0);
        double b = Math.Abs(found.Whole.RhoActiveB ?? 0);
        if (Math.Max(a, b) < CrosstalkRho)
        {
            return null;
        }

        double gain = 100 * Math.Abs((a >= b ? found.Whole.GainAb : found.Whole.GainBa) ?? 0);
        return new Finding
        {
            Reason = ReasonCode.Crosstalk,
            Grade = Grade.Pass,
            Channels = [found.NameA, found.NameB],
            FromS = 0,
            ToS = found.Pair.ChannelA.TimelineLength / found.Pair.ChannelA.Rate.Value,
            Evidence = [],
            Text = string.Create(
                CultureInfo.InvariantCulture,
                $"{found.NameA} and {found.NameB} share {gain:0} % of a contraction: crosstalk, or a bridge with quiet electrodes; not decided"),
            Cause = "muscle activity spreads through tissue to adjacent sites",
        };
    }
}
