using ChannelAudit.Excerpts;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;
using MeasureCatalog = ChannelAudit.Measures.MeasureCatalog;
using MeasureValue = ChannelAudit.Measures.MeasureValue;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>
/// Laws that every measure obeys through the whole engine, with and without a scoring filter: what a gain does to it, what a turned polarity, another order of
/// channels and a trial that is cut out into a recording of its own do not. Limits in microvolts stay where they are, so that a gain may change verdicts.
/// </summary>
public sealed class MeasureLawTests
{
    // Rounding of the samples by a factor that is no power of two, carried through sums of some thousand squares.
    private const double Near = 1e-9;
    private const string Filtered = "\n[scoring]\nhighpass_hz = 20\n";

    /// <summary>Times k when every sample is: voltages; and the amplitude at rest over the noise of the amplifier, which the setup states in microvolts.</summary>
    private static readonly string[] Voltages =
    [
        "line_rms", "line_left", "narrow_rms", "narrow_left", "emg_rms", "drift_slope", "drift_range", "lowfreq_rms", "lowfreq_left", "rest_rms", "band_p95", "rest_excess", "rectified",
        "line_shift", "narrow_shift", "lowfreq_shift", "noise_shift", "pops_shift", "clipped_shift", "flat_shift",
    ];

    /// <summary>The same number whatever the gain: times, counts, frequencies and ratios, those in dB too, none of which is over a fixed voltage.</summary>
    private static readonly string[] Ratios =
    [
        "line_ratio", "line_left_ratio", "narrow_ratio", "narrow_hz", "narrow_left_ratio", "clipped", "clipped_run", "peak_use", "flat", "flat_run", "missing", "gap", "headroom", "level_trend",
        "lowfreq_ratio", "lowfreq_left_ratio", "pops", "pop_rate", "pop_share", "whiteness", "contraction_snr",
        "line_effect", "narrow_effect", "lowfreq_effect", "noise_effect", "pops_effect", "clipped_effect", "flat_effect",
    ];

    /// <summary>Has the sign of the signal.</summary>
    private static readonly string[] Signed = ["drift_slope"];

    private static readonly SessionPlan Plan = MakePlan();

    private static readonly Recording Made = MadeRecording.Make(Plan).Open();
    private static readonly Dictionary<string, RecordingResult> Plain = new(StringComparer.Ordinal)
    {
        [string.Empty] = Audited(Same, string.Empty),
        [Filtered] = Audited(Same, Filtered),
    };

    [Fact]
    public void EveryMeasureIsClassifiedAndHasValuesHere()
    {
        Assert.Equal(
            MeasureCatalog.OfChannels.Select(one => one.Name).Order(StringComparer.Ordinal), Voltages.Concat(Ratios).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.All(Voltages.Concat(Ratios), name => Assert.Contains(
            Plain.Values.SelectMany(AllMeasures), one => string.Equals(one.Measure, name, StringComparison.Ordinal) && one.Value is not null and not 0));
    }

    [Theory]
    [InlineData("", 0.1)]
    [InlineData("", 3.7)]
    [InlineData(Filtered, 0.1)]
    [InlineData(Filtered, 3.7)]
    public void AGainScalesVoltagesAndNothingElse(string scoring, double gain)
    {
        RecordingResult scaled = Audited(recording => Altered.Scaled(recording, gain, 0), scoring);

        AssertMeasures(Plain[scoring], scaled, name => Voltages.Contains(name, StringComparer.Ordinal) ? gain : 1);

        // Which quiet seconds are without a fault is told by limits in microvolts: what is taken over them may be taken over others.
        foreach ((PairResult one, PairResult other) in Plain[scoring].Pairs.Zip(scaled.Pairs))
        {
            Assert.Equal(one.Rows.Select(row => row.Trial), other.Rows.Select(row => row.Trial), StringComparer.Ordinal);
            Assert.All(one.Rows.Zip(other.Rows).Where(both => both.First.Trial is not "rest"), both => AssertRow(both.First, both.Second));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData(Filtered)]
    public void APolarityTurnedChangesSignsOnly(string scoring)
    {
        RecordingResult turned = Audited(recording => Altered.Scaled(recording, -1, 0), scoring);

        AssertMeasures(Plain[scoring], turned, name => Signed.Contains(name, StringComparer.Ordinal) ? -1 : 1);
        Assert.All(Plain[scoring].Pairs.Zip(turned.Pairs), both => AssertPair(both.First, both.Second));
        Assert.Equal(Verdicts(Plain[scoring]), Verdicts(turned), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("", new[] { 2, 0, 1 })]
    [InlineData(Filtered, new[] { 2, 1, 0 })]
    public void TheOrderOfChannelsChangesTheOrderOnly(string scoring, int[] order)
    {
        RecordingResult other = Audited(recording => Altered.Reordered(recording, order), scoring);

        Assert.Equal(order.Select(old => Plain[scoring].Channels[old].Name), other.Channels.Select(channel => channel.Name), StringComparer.Ordinal);
        AssertMeasures(Plain[scoring], other, _ => 1);
        Assert.Equal(Verdicts(Plain[scoring]).Order(StringComparer.Ordinal), Verdicts(other).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal(Plain[scoring].Pairs.Length, other.Pairs.Length);
        Assert.All(Plain[scoring].Pairs, pair => AssertPair(pair, InOrderOf(pair, other)));
    }

    /// <summary>What rests on rails, flat stretches, spikes or rest of the whole channel cannot be the same: <see cref="ExcerptMeasures.IsOfWindowAlone"/> names those.</summary>
    [Theory]
    [InlineData("")]
    [InlineData(Filtered)]
    public void ATrialInARecordingOfItsOwnHasTheSameNumbers(string scoring)
    {
        List<string> others = [];
        int compared = 0;
        foreach (Trial trial in Plain[scoring].Trials.Where(trial => trial.Role == TrialRole.Scored))
        {
            RecordingResult alone = Audited(recording => Altered.CutOut(recording, trial), scoring);
            foreach (ChannelResult channel in Plain[scoring].Channels)
            {
                MeasureValue[] own = [.. OfWindow(channel, trial.Number)];
                MeasureValue[] other = [.. OfWindow(MadeAudit.Channel(alone, channel.Name), 1)];
                others.AddRange(own.Zip(other).Where(both => !IsSame(both.First, both.Second, 1)).Select(both => both.First.Measure));
                compared += own.Count(one => one.Value is not null);
            }
        }

        Assert.Empty(others.Distinct(StringComparer.Ordinal));
        Assert.InRange(compared, 300, int.MaxValue);
    }

    private static IEnumerable<MeasureValue> OfWindow(ChannelResult channel, int trial) =>
        Values(channel.Cells.Single(cell => cell.Trial == trial)).Where(one => ExcerptMeasures.IsOfWindowAlone(one.Measure));

    private static SessionPlan MakePlan()
    {
        SessionPlan plan = MadeAudit.Session(703, new Rational(2000, 1), 8);
        return MadeAudit.WithConfusersAndMotion(
            plan,
            new MainsPickup(["brow"], 7) { Span = new FaultSpan(60, null) },
            new NarrowPeak(["eye"], 2, 85.3),
            new RailBlocks("cheek", 0.5, 2) { Span = FaultSpan.Of(plan.Trials[5]) },
            new Flatline("cheek") { Span = new FaultSpan(plan.Trials[6].OnsetS + 1, plan.Trials[6].OnsetS + 1.3M) },
            new ElectrodePops("brow", 400, 6),
            new BroadbandNoise(["eye"], 3) { Span = FaultSpan.Of(plan.Trials[8]) },
            ElectrodeBridge.OneNode("cheek", "eye", 0.1),
            new MissingSamples("brow") { Span = new FaultSpan(plan.Trials[0].OnsetS + 2, plan.Trials[0].OnsetS + 2.2M) });
    }

    private static RecordingResult Audited(Func<Recording, Recording> change, string scoring)
    {
        using Recording changed = change(Made);
        StudySetup setup = MadeAudit.SetupOf(Plan, scoring);
        return MadeAudit.Of(changed, setup with { Recording = setup.Recording with { MainsHz = 50, AmplifierNoiseUv = 0.45 } });
    }

    private static Recording Same(Recording recording) => Altered.Scaled(recording, 1, 0);

    private static IEnumerable<MeasureValue> AllMeasures(RecordingResult result) =>
        result.Channels.SelectMany(channel => channel.Measures.Select(one => one.Value).Concat(channel.Cells.SelectMany(Values)));

    private static IEnumerable<MeasureValue> Values(CellResult cell) => cell.Measures.Select(one => one.Value);

    private static string[] Verdicts(RecordingResult result) =>
    [
        .. result.Channels.SelectMany(channel => channel.Cells
            .Select(cell => FormattableString.Invariant($"{channel.Name} {cell.Trial} {cell.Verdict} {string.Join('+', cell.Reasons)} {string.Join('+', cell.NotAssessed.Select(one => one.Reason))}"))
            .Append(FormattableString.Invariant($"{channel.Name} {channel.Verdict} {string.Join('+', channel.Reasons)} {string.Join('+', channel.NotAssessed.Select(one => one.Reason))}"))),
    ];

    private static void AssertMeasures(RecordingResult plain, RecordingResult other, Func<string, double> factor)
    {
        foreach (ChannelResult channel in plain.Channels)
        {
            ChannelResult same = MadeAudit.Channel(other, channel.Name);
            AssertMeasures(channel.Name, [.. channel.Measures.Select(one => one.Value)], [.. same.Measures.Select(one => one.Value)], factor);
            Assert.Equal(channel.Cells.Length, same.Cells.Length);
            foreach ((CellResult one, CellResult two) in channel.Cells.Zip(same.Cells))
            {
                AssertMeasures(FormattableString.Invariant($"{channel.Name}, trial {one.Trial}"), [.. Values(one)], [.. Values(two)], factor);
            }
        }
    }

    private static void AssertMeasures(string where, MeasureValue[] plain, MeasureValue[] other, Func<string, double> factor)
    {
        Assert.Equal(plain.Select(one => one.Measure), other.Select(one => one.Measure), StringComparer.Ordinal);
        foreach ((MeasureValue one, MeasureValue two) in plain.Zip(other))
        {
            double times = factor(one.Measure);
            Assert.True(IsSame(one, two, times), FormattableString.Invariant($"{where}: {one.Measure} is {two.Value} instead of {times} x {one.Value} ({one.Note}; {two.Note})"));
        }
    }

    private static bool IsSame(MeasureValue one, MeasureValue other, double factor)
    {
        double expected = factor * (one.Value ?? 0);
        return one.Value is null == other.Value is null && Math.Abs(expected - (other.Value ?? 0)) <= Near * Math.Max(Math.Abs(expected), Floor(one.Measure));
    }

    // dB near 0 and effects near 0 are differences of what is large: rounding is that of the large ones.
    private static double Floor(string measure) => MeasureCatalog.Get(measure).Unit is "dB" or "%" || measure.EndsWith("_shift", StringComparison.Ordinal) ? 1 : 0;

    private static PairResult InOrderOf(PairResult pair, RecordingResult other)
    {
        PairResult found = other.Pairs.Single(one => NamesOf(one).SetEquals(NamesOf(pair)));
        return string.Equals(found.ChannelA, pair.ChannelA, StringComparison.Ordinal) ? found : found with
        {
            ChannelA = found.ChannelB,
            ChannelB = found.ChannelA,
            Rows = [.. found.Rows.Select(row => row with { GainAb = row.GainBa, GainBa = row.GainAb, Trial = Turned(row.Trial) })],
            Evidence = found.Evidence with
            {
                ActiveASegments = found.Evidence.ActiveBSegments,
                ActiveBSegments = found.Evidence.ActiveASegments,
                RhoActiveA = found.Evidence.RhoActiveB,
                RhoActiveB = found.Evidence.RhoActiveA,
                GainAb = found.Evidence.GainBa,
                GainBa = found.Evidence.GainAb,
            },
        };
    }

    private static HashSet<string> NamesOf(PairResult pair) => new([pair.ChannelA, pair.ChannelB], StringComparer.Ordinal);

    private static string Turned(string trial) => trial switch
    {
        "active_a" => "active_b",
        "active_b" => "active_a",
        _ => trial,
    };

    private static void AssertPair(PairResult one, PairResult other)
    {
        Assert.Equal((one.ChannelA, one.ChannelB, one.Rows.Length), (other.ChannelA, other.ChannelB, other.Rows.Length));
        foreach (PairRow row in one.Rows)
        {
            AssertRow(row, other.Rows.Single(two => string.Equals(two.Trial, row.Trial, StringComparison.Ordinal)));
        }

        (BridgeEvidence plain, BridgeEvidence found) = (one.Evidence, other.Evidence);
        Assert.Equal((plain.Decision, plain.RestSegments), (found.Decision, found.RestSegments));
        Assert.Equal((plain.ActiveASegments, plain.ActiveBSegments), (found.ActiveASegments, found.ActiveBSegments));
        AssertNear(
            [plain.RhoRest, plain.RhoHighRest, plain.RhoActiveA, plain.RhoActiveB, plain.GainAb, plain.GainBa],
            [found.RhoRest, found.RhoHighRest, found.RhoActiveA, found.RhoActiveB, found.GainAb, found.GainBa],
            one.ChannelA + one.ChannelB);
    }

    private static void AssertRow(PairRow one, PairRow other) => AssertNear(
        [one.Rho, one.RhoHigh, one.Distance, one.Coherence, one.GainAb, one.GainBa],
        [other.Rho, other.RhoHigh, other.Distance, other.Coherence, other.GainAb, other.GainBa],
        one.Trial);

    private static void AssertNear(double?[] plain, double?[] other, string where)
    {
        for (int i = 0; i < plain.Length; i++)
        {
            Assert.True(plain[i] is null == other[i] is null && Math.Abs((plain[i] ?? 0) - (other[i] ?? 0)) <= Near, FormattableString.Invariant($"{where}, {i}: {other[i]} instead of {plain[i]}"));
        }
    }
}
