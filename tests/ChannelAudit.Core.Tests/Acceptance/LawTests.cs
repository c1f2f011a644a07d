using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>What must not change an answer: labels of conditions, culture, polarity, an offset; and what a gain may change.</summary>
public sealed class LawTests
{
    private static readonly Lazy<SessionPlan> Plan = new(MakePlan);
    private static readonly Lazy<RecordingResult> Result = new(() => MadeAudit.Of(Plan.Value));

    [Fact]
    public void TheSessionOfTheseTestsHasAllVerdicts()
    {
        Grade[] verdicts = [.. Result.Value.Channels.SelectMany(channel => channel.Cells).Select(cell => cell.Verdict).Distinct().Order()];

        Assert.Equal([Grade.Pass, Grade.Questionable, Grade.Reject], verdicts);
    }

    [Theory]
    [InlineData("swapped")]
    [InlineData("alike")]
    [InlineData("all different")]
    public void LabelsOfConditionsChangeNothing(string how)
    {
        string[] conditions = ["harbour", "meadow"];
        SessionPlan renamed = Plan.Value with
        {
            Trials =
            [
                .. Plan.Value.Trials.Select((trial, i) => trial with
                {
                    Label = !conditions.Contains(trial.Label, StringComparer.Ordinal) ? trial.Label
                        : how switch
                        {
                            "swapped" => conditions[1 - Array.IndexOf(conditions, trial.Label)],
                            "alike" => "sky",
                            _ => FormattableString.Invariant($"word {i}"),
                        },
                }),
            ],
        };

        Assert.Equal(MadeAudit.Everything(Result.Value), MadeAudit.Everything(MadeAudit.Of(renamed)));
    }

    [Fact]
    public void TheCultureChangesNothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        comma.NumberFormat.NegativeSign = "\u2212";
        string expected = MadeAudit.Everything(Result.Value);
        try
        {
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(expected, MadeAudit.Everything(MadeAudit.Of(Plan.Value)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void PolarityChangesSlopesOnly()
    {
        RecordingResult turned = Scaled(-1, 0);

        AssertAlike(turned, ["drift_slope"], 1e-9);
        Assert.All(
            Measures(turned, "drift_slope").Zip(Measures(Result.Value, "drift_slope")),
            pair => Assert.Equal(-pair.Second!.Value, pair.First!.Value, 1e-6));
    }

    [Fact]
    public void AnOffsetChangesHeadroomOnly() => AssertAlike(Scaled(1, 64), ["headroom"], 1e-6);

    [Fact]
    public void AGainScalesWhatIsInMicrovoltsAndNothingElse()
    {
        RecordingResult doubled = Scaled(2, 0);
        string[] unitless = ["line_ratio", "narrow_ratio", "narrow_hz", "clipped", "clipped_run", "peak_use", "missing", "gap", "headroom", "level_trend", "lowfreq_ratio", "pops", "pop_rate", "pop_share", "whiteness"];
        string[] scaled = ["line_rms", "narrow_rms", "emg_rms", "drift_slope", "drift_range", "lowfreq_rms", "rest_rms"];

        Assert.All(unitless, measure => AssertNear(Measures(doubled, measure), Measures(Result.Value, measure), 1, 1e-9));
        Assert.All(scaled, measure => AssertNear(Measures(doubled, measure), Measures(Result.Value, measure), 2, 1e-9));
        Assert.All(doubled.Pairs.Zip(Result.Value.Pairs), both => Assert.Equal(both.Second.Evidence.RhoHighRest!.Value, both.First.Evidence.RhoHighRest!.Value, 1e-6));
    }

    private static SessionPlan MakePlan()
    {
        SessionPlan plan = MadeAudit.Session(701, new Rational(1000, 1), 6);
        return MadeAudit.WithConfusers(
            plan,
            new MainsPickup(["brow"], 7) { Span = new FaultSpan(60, null) },
            new NarrowPeak(["eye"], 2, 85.3),
            new RailBlocks("cheek", 0.5, 2) { Span = FaultSpan.Of(plan.Trials[5]) },
            new Flatline("cheek") { Span = new FaultSpan(plan.Trials[6].OnsetS + 1, plan.Trials[6].OnsetS + 1.3M) },
            ElectrodeBridge.OneNode("cheek", "eye", 0.1));
    }

    private static RecordingResult Scaled(double gain, double offset)
    {
        using Recording plain = MadeRecording.Make(Plan.Value).Open();
        using Recording scaled = Altered.Scaled(plain, gain, offset);
        return MadeAudit.Of(scaled, Plan.Value);
    }

    private static void AssertAlike(RecordingResult other, string[] but, double tolerance)
    {
        Assert.Equal(Verdicts(Result.Value), Verdicts(other));
        string[] measures = [.. Result.Value.Channels[0].Measures.Select(one => one.Value.Measure).Except(but, StringComparer.Ordinal)];
        Assert.All(measures, measure => AssertNear(Measures(other, measure), Measures(Result.Value, measure), 1, tolerance));
    }

    private static string[] Verdicts(RecordingResult result) =>
        [.. result.Channels.SelectMany(channel => channel.Cells.Select(cell => FormattableString.Invariant($"{channel.Name} {cell.Trial} {cell.Verdict} {string.Join('+', cell.Reasons)}")))];

    private static double?[] Measures(RecordingResult result, string measure) =>
    [
        .. result.Channels.SelectMany(channel => channel.Cells.Select(cell => cell.Measures).Append(channel.Measures))
            .Select(measures => measures.Single(one => string.Equals(one.Value.Measure, measure, StringComparison.Ordinal)).Value.Value),
    ];

    private static void AssertNear(double?[] found, double?[] plain, double factor, double tolerance)
    {
        for (int i = 0; i < plain.Length; i++)
        {
            Assert.Equal(plain[i] is null, found[i] is null);
            Assert.Equal(factor * (plain[i] ?? 0), found[i] ?? 0, tolerance * Math.Max(1, Math.Abs(plain[i] ?? 0)));
        }
    }
}
