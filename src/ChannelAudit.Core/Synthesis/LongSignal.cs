namespace ChannelAudit.Synthesis;

/// <summary>One channel of a long recording, made as it is asked for.</summary>
internal sealed class LongSignal
{
    private readonly SessionPlan plan;
    private readonly SitePlan site;
    private readonly Loop noise;
    private readonly Loop muscle;
    private int trial;

    /// <summary>Makes the two rounds of noise.</summary>
    /// <param name="plan">The plan with its trials in order of onset.</param>
    /// <param name="quiet">A minute of the same channel without muscle.</param>
    /// <param name="index">The site's position.</param>
    internal LongSignal(SessionPlan plan, MadeRecording quiet, int index)
    {
        this.plan = plan;
        site = plan.Sites[index];
        double[] background = new double[quiet.Plan.Length];
        ReadOnlySpan<int> codes = quiet.CodesOf(site.Name);
        for (int i = 0; i < background.Length; i++)
        {
            // The slow settling of one minute would be a saw-tooth when repeated.
            double settled = quiet.SettlingUvPerMin(site.Name) * i / background.Length;
            background[i] = (codes[i] * plan.Amplifier.StepUv) - settled;
        }

        double[] round = new double[background.Length];
        ShapedNoise.Fill(NoiseStream.Of(plan.Seed, "muscle-1:" + site.Name), NoiseBand.Muscle, plan.Rate.Value, round);
        noise = new Loop(background, NoiseStream.Of(plan.Seed, "noise-loop:" + site.Name));
        muscle = new Loop(round, NoiseStream.Of(plan.Seed, "muscle-loop:" + site.Name));
    }

    /// <summary>Gives samples in µV; asked for in order.</summary>
    internal void Fill(long first, Span<double> destination)
    {
        double rate = plan.Rate.Value;
        for (int i = 0; i < destination.Length; i++)
        {
            destination[i] = noise.Next() + (LevelAt((first + i) / rate) * muscle.Next());
        }
    }

    private double LevelAt(double seconds)
    {
        while (trial < plan.Trials.Length && seconds >= (double)plan.Trials[trial].EndS)
        {
            trial++;
        }

        return trial < plan.Trials.Length && seconds >= (double)plan.Trials[trial].OnsetS
            ? MuscleLevels.LevelIn(plan.Trials[trial], site.Name, site.RestUv)
            : site.RestUv;
    }
}
