using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Contractions that an amplifier cuts off, at limits that the file states and at limits that it does not; truth: the stored codes.</summary>
public sealed class SaturationTests
{
    // A Gaussian of 25 µV and a little more: beyond these rails lie 1.5 times and 0.7 times 1 % of it, more or less.
    private const double Above = 58;
    private const double Below = 68;

    [Theory]
    [InlineData(811, Above, true)]
    [InlineData(812, Above, true)]
    [InlineData(813, Below, true)]
    [InlineData(814, Below, true)]
    [InlineData(815, Above, false)]
    [InlineData(816, Above, false)]
    [InlineData(817, Below, false)]
    [InlineData(818, Below, false)]
    public void TheShareThatWasCutOffIsMeasuredExactly(ulong seed, double railUv, bool isStated)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1), 2);
        plan = plan with
        {
            Amplifier = plan.Amplifier with { OffsetUv = 0, SettlingUvPerMin = 0 },
            Faults = [new MainsPickup(MadeAudit.Sites, 0.3), isStated ? new HeaderRail("cheek", railUv) : new HiddenRail("cheek", railUv)],
        };
        MadeRecording made = MadeRecording.Make(plan);
        using Recording recording = made.Open();

        RecordingResult result = MadeAudit.Of(recording, plan);

        // A rail that no file states is known only where two samples in a row are held at it.
        bool upper = isStated || IsHeld(made, railUv, 1);
        bool lower = isStated || IsHeld(made, railUv, -1);
        ImmutableArray<double> shares = [.. plan.Trials.Select(trial => (upper ? Share(made, trial, railUv, 1) : 0) + (lower ? Share(made, trial, railUv, -1) : 0))];
        Assert.Contains(plan.Trials.Zip(shares), one => one.First.Role == TrialRole.Task && one.Second > 0.3);
        Assert.Equal(
            shares.Select(share => Math.Round(share, 9)),
            MadeAudit.Channel(result, "cheek").Cells.Select(cell =>
                Math.Round(cell.Measures.Single(one => string.Equals(one.Value.Measure, "clipped", StringComparison.Ordinal)).Value.Value!.Value, 9)));
        Assert.Equal(Numbers(shares, 1), MadeAudit.RejectedFor(result, "cheek", "clipping"));
        Assert.Equal(Numbers(shares, 0.01), MadeAudit.FoundFor(result, "cheek", "clipping"));
    }

    private static int[] Numbers(ImmutableArray<double> shares, double limit) => [.. Enumerable.Range(1, shares.Length).Where(i => shares[i - 1] >= limit)];

    private static bool IsHeld(MadeRecording made, double railUv, int sign)
    {
        int rail = (int)Math.Round(railUv / made.Plan.Amplifier.StepUv);
        ReadOnlySpan<int> codes = made.CodesOf("cheek");
        for (int i = 1; i < codes.Length; i++)
        {
            if (sign * codes[i] >= rail - 1 && sign * codes[i - 1] >= rail - 1)
            {
                return true;
            }
        }

        return false;
    }

    private static double Share(MadeRecording made, PlannedTrial trial, double railUv, int sign)
    {
        SampleSpan span = made.Plan.SamplesOf(FaultSpan.Of(trial));
        int rail = (int)Math.Round(railUv / made.Plan.Amplifier.StepUv);
        int count = 0;
        foreach (int code in made.CodesOf("cheek")[span.From..span.To])
        {
            count += sign * code >= rail - 1 ? 1 : 0;
        }

        return 100.0 * count / span.Length;
    }
}
