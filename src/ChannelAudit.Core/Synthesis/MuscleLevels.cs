using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis;

/// <summary>How active a muscle is at every sample.</summary>
/// <remarks>
/// A trial has its level from its first to its last sample, so that its amplitude is the one asked for; the muscle comes and
/// goes along a straight line in the 60 ms around it, where no other trial lies.
/// </remarks>
internal static class MuscleLevels
{
    private const decimal RampS = 0.06M;

    /// <summary>Fills in the levels of one site.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="site">The site's position.</param>
    /// <param name="levelsUv">Receives µV rms, one value a sample.</param>
    internal static void Fill(SessionPlan plan, int site, Span<double> levelsUv)
    {
        double rest = plan.Sites[site].RestUv;
        levelsUv.Fill(rest);
        foreach (PlannedTrial trial in plan.Trials)
        {
            double level = LevelIn(trial, plan.Sites[site].Name, rest);
            SampleSpan ramp = plan.SamplesOf(new FaultSpan(trial.OnsetS - RampS, trial.EndS + RampS));
            SampleSpan inside = plan.SamplesOf(FaultSpan.Of(trial));
            double perSample = (level - rest) / (plan.Rate.Value * (double)RampS);
            for (int i = ramp.From; i < inside.From; i++)
            {
                levelsUv[i] = level - (perSample * (inside.From - i));
            }

            for (int i = inside.To; i < ramp.To; i++)
            {
                levelsUv[i] = level - (perSample * (i + 1 - inside.To));
            }
        }

        foreach (PlannedTrial trial in plan.Trials)
        {
            SampleSpan inside = plan.SamplesOf(FaultSpan.Of(trial));
            levelsUv.Slice(inside.From, inside.Length).Fill(LevelIn(trial, plan.Sites[site].Name, rest));
        }
    }

    internal static double LevelIn(PlannedTrial trial, string site, double rest)
    {
        foreach (SiteActivity activity in trial.Activity)
        {
            if (string.Equals(activity.Site, site, StringComparison.Ordinal))
            {
                return activity.RmsUv;
            }
        }

        return rest;
    }
}
