using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Random;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>Sway of leads and head in some trials, different in each trial and site.</summary>
/// <remarks>It comes and goes within half a second, so that no edge looks like a muscle.</remarks>
/// <param name="Sites">The sites that carry it.</param>
/// <param name="Numbers">The trials, numbered from 1.</param>
/// <param name="RmsUv">µV rms of the sway from 0.5 to 8 Hz.</param>
internal sealed record TrialMotion(ImmutableArray<string> Sites, ImmutableArray<int> Numbers, double RmsUv) : Fault
{
    private const decimal TaperS = 0.5M;

    /// <summary>Chooses trials by chance.</summary>
    /// <param name="session">The session; its seed decides.</param>
    /// <param name="storm">Share of the trials in a storm.</param>
    /// <param name="other">Share of the other scored trials.</param>
    internal static TrialMotion In(HarbourSession session, double storm, double other)
    {
        Pcg32 random = NoiseStream.Of(session.Seed, "who moved when");
        ImmutableArray<PlannedTrial> trials = session.Trials;
        bool Moved(PlannedTrial trial) => random.NextDouble() < (string.Equals(trial.Label, HarbourProtocol.Storm, StringComparison.Ordinal) ? storm
            : HarbourProtocol.Conditions.Contains(trial.Label, StringComparer.Ordinal) ? other : 0);
        ImmutableArray<int> numbers = [.. Enumerable.Range(1, trials.Length).Where(number => Moved(trials[number - 1]))];
        return new TrialMotion(["cheek", "brow", "eye"], numbers, 300);
    }

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [new Truth(ReasonCode.LowFrequency, Sites, "lowfreq_rms", RmsUv * Math.Sqrt(NoiseBand.Motion.ShareBetween(2, 15)), "uV", Span, Numbers)];

    internal override void AddInput(SignalPath path)
    {
        double[] sway = new double[path.Plan.Length];
        int taper = (int)path.Plan.Rate.IndexAt(TaperS);
        foreach (string site in Sites)
        {
            ShapedNoise.Fill(NoiseStream.Of(path.Plan.Seed, "trial-motion:" + site), NoiseBand.Motion, path.Plan.Rate.Value, sway);
            double[] input = path.Site(site).Input;
            foreach (int number in Numbers)
            {
                SampleSpan span = path.Plan.SamplesOf(FaultSpan.Of(path.Plan.Trials[number - 1]));
                for (int i = span.From; i < span.To; i++)
                {
                    int fromEdge = Math.Min(Math.Min(i - span.From, span.To - 1 - i), taper);
                    double share = 0.5 * (1 - RepeatableMath.SinCosOfPart(fromEdge, 2 * taper).Cos);
                    input[i] += RmsUv * share * sway[i];
                }
            }
        }
    }
}
