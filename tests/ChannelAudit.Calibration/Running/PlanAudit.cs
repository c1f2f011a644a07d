using System.Collections.Immutable;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Calibration.Running;

/// <summary>Makes a recording, audits it, and counts. The audit sees samples, labels and a setup with the sites, the tasks and the amplifier's noise; of the rest of the plan nothing.</summary>
internal static class PlanAudit
{
    /// <summary>Counts for one recording under some limits.</summary>
    public static ImmutableArray<PointCount> Count(Sweep sweep, double severity, ulong seed, ImmutableArray<AuditCriteria> criteria)
    {
        SessionPlan plan = sweep.Plan(Subject.Draw(seed), severity);
        MadeRecording made = MadeRecording.Make(plan);
        using Recording opened = made.Open();
        using Recording recording = sweep.Alter?.Invoke(opened, severity) ?? opened;
        StudySetup setup = SetupFile.Parse(SetupText.Of(plan), "setup.toml");
        HashSet<FaultyCell> faulty = [.. sweep.Cells?.Invoke(plan) ?? CellsOf(made, sweep)];
        return [.. criteria.Select(limits => CountOf(Audited(recording, setup, limits), sweep.Reasons, faulty))];
    }

    /// <summary>Audits a recording whose trials are its annotations.</summary>
    public static RecordingResult Audited(Recording recording, StudySetup setup, AuditCriteria criteria)
    {
        TrialSet trials = TrialPlan.Of(recording, TrialSources.Choose(recording, setup, null, RecordingCompanions.None), setup);
        return Audit.Of(
            recording,
            new AuditInput
            {
                Id = "study",
                Path = "study",
                Sha256 = string.Empty,
                Criteria = criteria,
                Setup = setup,
                Trials = trials.Trials,
                TrialsFrom = "annotations",
            },
            CancellationToken.None);
    }

    /// <summary>Counts the cells of a result.</summary>
    /// <param name="result">The result.</param>
    /// <param name="reasons">The right reasons.</param>
    /// <param name="faulty">The cells that the fault meets.</param>
    /// <param name="uncounted">Cells that are neither faulty as stated nor free of the fault; null: none.</param>
    public static PointCount CountOf(RecordingResult result, ImmutableArray<string> reasons, HashSet<FaultyCell> faulty, HashSet<FaultyCell>? uncounted = null)
    {
        PointCount count = PointCount.Empty with { Recordings = 1 };
        foreach (ChannelResult channel in result.Channels)
        {
            foreach (CellResult cell in channel.Cells.Where(cell => uncounted?.Contains(new FaultyCell(channel.Name, cell.Trial)) != true))
            {
                count += faulty.Contains(new FaultyCell(channel.Name, cell.Trial)) ? OfFaulty(CellVerdict.For(channel, cell, reasons)) : OfOther(cell);
            }
        }

        return count;
    }

    private static PointCount OfFaulty(Grade grade) => PointCount.Empty with
    {
        Faulty = 1,
        Found = grade >= Grade.Questionable ? 1 : 0,
        Rejected = grade == Grade.Reject ? 1 : 0,
    };

    private static PointCount OfOther(CellResult cell) => PointCount.Empty with
    {
        Other = 1,
        OtherQuestionable = cell.Verdict == Grade.Questionable ? 1 : 0,
        OtherRejected = cell.Verdict == Grade.Reject ? 1 : 0,
        FalseReasons = cell.Verdict == Grade.Pass
            ? PointCount.Empty.FalseReasons
            : PointCount.Empty.FalseReasons.AddRange(cell.Reasons.Select(reason => KeyValuePair.Create(reason, 1))),
    };

    private static IEnumerable<FaultyCell> CellsOf(MadeRecording made, Sweep sweep) => made.Truths
        .Where(truth => sweep.Reasons.Contains(truth.Reason, StringComparer.Ordinal))
        .SelectMany(truth => truth.Sites.SelectMany(site => truth.Trials.Select(trial => new FaultyCell(site, trial))))
        .Distinct();
}
