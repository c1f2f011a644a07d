using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Findings.Tasks;
using ChannelAudit.Verdicts;

namespace ChannelAudit;

/// <summary>The grade that each reason gives each trial and channel under some limits: nothing else of what the rules say.</summary>
/// <remarks>No rule looks at the limits of another reason, so grades of several tables can be mixed reason by reason.</remarks>
internal sealed class GradeTable
{
    private readonly Grade[][][] trials;
    private readonly Grade[][] wholes;

    private GradeTable(Grade[][][] ofTrials, Grade[][] ofWholes) => (trials, wholes) = (ofTrials, ofWholes);

    /// <summary>Number of channels.</summary>
    public int Channels => wholes.Length;

    /// <summary>Judges.</summary>
    /// <param name="readings">What was read.</param>
    /// <param name="criteria">The limits, not yet those behind a scoring filter.</param>
    public static GradeTable Of(AuditReadings readings, AuditCriteria criteria)
    {
        AuditCriteria asked = readings.Asked(criteria);
        ImmutableArray<Finding> swaps = LeadSwap.Find(readings.Answers, asked.For(ReasonCode.LeadSwap), readings.DurationS);
        ImmutableArray<PairJudgement> pairs = readings.Judge(asked.For(ReasonCode.Bridge));
        Grade[][][] ofTrials = new Grade[readings.Cases.Length][][];
        Grade[][] ofWholes = new Grade[readings.Cases.Length][];
        for (int index = 0; index < ofTrials.Length; index++)
        {
            ChannelCases channel = readings.Cases[index].Before(asked);
            ChannelRules rules = ChannelRules.WithoutWords(channel.Channel, asked);
            ImmutableArray<PairJudgement> own = [.. pairs.Where(pair => pair.A == index || pair.B == index)];
            ImmutableArray<Finding> carried = [.. swaps.Where(swap => swap.Channels.Contains(channel.Channel.Name, StringComparer.Ordinal))];
            ImmutableArray<Finding> throughout = CollapseRule.OfTrials(channel.Whole) is { } collapse ? [.. carried, collapse] : carried;
            ofTrials[index] = [.. channel.Windows.Select((window, i) => ByReason(VerdictPolicy.CellGrades(
                window, rules.Judge(window), channel.Baselines[i] is { } before ? rules.Judge(before) : [], BridgedTrials.GradeOf(own, i), throughout)))];
            ofWholes[index] = ByReason(VerdictPolicy.ChannelGrades(channel.Whole, rules.Judge(channel.Whole), own, carried));
        }

        return new GradeTable(ofTrials, ofWholes);
    }

    /// <summary>What a reason makes of a trial.</summary>
    /// <param name="channel">Position of the channel.</param>
    /// <param name="trial">Position of the trial.</param>
    /// <param name="reason">The reason code.</param>
    public Grade TrialGrade(int channel, int trial, string reason) => trials[channel][trial][ReasonCode.All.IndexOf(reason)];

    /// <summary>Verdicts of the trials of a channel, counted, where one reason is judged by another table.</summary>
    /// <param name="channel">Position of the channel.</param>
    /// <param name="reason">Position of the reason among <see cref="ReasonCode.All"/>; -1 for none.</param>
    /// <param name="moved">The table that judges it.</param>
    public GradeCounts TrialsWith(int channel, int reason, GradeTable moved)
    {
        GradeCounts counts = default;
        for (int trial = 0; trial < trials[channel].Length; trial++)
        {
            counts = counts.Plus(Worst(trials[channel][trial], reason, moved.trials[channel][trial]));
        }

        return counts;
    }

    /// <summary>The same of the channel itself, but for its share of bad trials.</summary>
    public Grade WholeWith(int channel, int reason, GradeTable moved) => Worst(wholes[channel], reason, moved.wholes[channel]);

    private static Grade Worst(Grade[] own, int reason, Grade[] moved)
    {
        Grade worst = Grade.Pass;
        for (int i = 0; i < own.Length; i++)
        {
            Grade grade = i == reason ? moved[i] : own[i];
            worst = grade > worst ? grade : worst;
        }

        return worst;
    }

    private static Grade[] ByReason(IEnumerable<(string Reason, Grade Grade)> found)
    {
        Grade[] grades = new Grade[ReasonCode.All.Length];
        foreach ((string reason, Grade grade) in found)
        {
            int place = ReasonCode.All.IndexOf(reason);
            grades[place] = grade > grades[place] ? grade : grades[place];
        }

        return grades;
    }
}
