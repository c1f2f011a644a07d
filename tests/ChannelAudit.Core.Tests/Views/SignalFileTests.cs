using System.Collections.Immutable;
using ChannelAudit.Core.Tests.Acceptance;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.TestKit;
using ChannelAudit.Views;
using Xunit;

namespace ChannelAudit.Core.Tests.Views;

/// <summary>What is seen of a file against what an audit of it measured, and against its plan.</summary>
public sealed class SignalFileTests : IDisposable
{
    private static readonly SessionPlan Plan = Faulty(MadeAudit.Session(911));

    private readonly TemporaryFolder _folder = new();
    private readonly RecordingResult _result;
    private readonly SignalFile _file;

    public SignalFileTests()
    {
        string path = _folder.In("session.edf");
        EdfFiles.Write(MadeRecording.Make(Plan), path);
        _result = RecordingAudit.Of(
            new RecordingEntry("session", path, "session.edf"), SetupFile.Parse(SetupText.Of(Plan), "setup.toml"), DefaultCriteria.All, null, CancellationToken.None, withViews: true);
        _file = SignalFile.Open(path, new ReadOptions());
    }

    public void Dispose()
    {
        _file.Dispose();
        _folder.Dispose();
    }

    [Theory]
    [InlineData("clipping", "clipped")]
    [InlineData("flatline", "flat")]
    [InlineData("dropout", "missing")]
    public void FaultsOfEveryTrialLastAsLongAsTheAuditMeasured(string reason, string measure)
    {
        int found = 0;
        foreach (ChannelResult result in _result.Channels)
        {
            Channel channel = _file.ChannelOf(result.Label)!;
            foreach ((Trial trial, CellResult cell) in _result.Trials.Zip(result.Cells))
            {
                (double from, double to) = ((double)trial.WindowFromS, (double)trial.WindowToS);
                ShownFaults faults = _file.Faults(channel, from, to, 0, CancellationToken.None);
                double seconds = faults.Marks.Where(mark => string.Equals(mark.Reason, reason, StringComparison.Ordinal)).Sum(mark => mark.ToS - mark.FromS);

                // Shares are of what is stored, missing of all.
                double missing = faults.Marks.Where(mark => mark.Reason is "dropout").Sum(mark => mark.ToS - mark.FromS);
                double whole = to - from - (measure is "missing" ? 0 : missing);
                Assert.Equal(cell.Measures.First(one => string.Equals(one.Value.Measure, measure, StringComparison.Ordinal)).Value.Value ?? 0, 100 * seconds / whole, 1);
                found += seconds > 0 ? 1 : 0;
            }
        }

        Assert.True(found > 0, reason);
    }

    [Fact]
    public void RailsAndHarmonicsAreThoseOfTheSheet() => Assert.All(_result.Channels, result =>
    {
        Channel channel = _file.ChannelOf(result.Label)!;
        ShownFaults faults = _file.Faults(channel, 0, 1, 0, CancellationToken.None);

        Assert.Equal((result.View!.LowerRail, result.View.UpperRail), (faults.LowerRail, faults.UpperRail));
        Assert.Equal(result.View.HarmonicsHz.ToArray(), _file.HarmonicsHz(channel, _result.Mains, CancellationToken.None).ToArray());
    });

    [Fact]
    public void AFlatStretchIsToldAtTheEdgeOfWhatIsShown()
    {
        decimal from = Plan.Trials[6].OnsetS + 1;

        ShownFaults faults = _file.Faults(Site("brow"), (double)from + 0.49, (double)from + 0.6, 0, CancellationToken.None);

        FaultMark mark = Assert.Single(faults.Marks, mark => mark.Reason is "flatline");
        Assert.Equal((double)from + 0.5, mark.ToS, 2);
    }

    [Fact]
    public void NeighboursAreJoinedWhereTheyCouldNotBeSeenApart()
    {
        Trial trial = _result.Trials[4];
        ImmutableArray<FaultMark> Marks(double finestS) =>
            _file.Faults(Site("eye"), (double)trial.WindowFromS, (double)trial.WindowToS, finestS, CancellationToken.None).Marks;

        Assert.True(Marks(0.1).Length < Marks(0).Length);
        Assert.All(Marks(0.1).Zip(Marks(0.1).Skip(1)), pair => Assert.True(pair.Second.FromS - pair.First.ToS > 0.09));
    }

    [Theory]
    [InlineData(4, 7, 1)]
    [InlineData(2, 3, 1)]
    [InlineData(1.6, 5, 0.5)]
    [InlineData(1.2, 11, 0.2)]
    [InlineData(0.3, 2, 0.2)]
    public void ShortWindowsHaveShorterSegments(double seconds, int count, double lengthS)
    {
        WindowSpectrum spectrum = _file.Spectrum(Site("cheek"), 2, 2 + seconds, CancellationToken.None)!;

        Assert.Equal((count, lengthS, false), (spectrum.Segments, spectrum.LengthS, spectrum.IsFlat));
    }

    [Fact]
    public void AFlatWindowAndOneTooShortSaySo()
    {
        double from = (double)Plan.Trials[6].OnsetS + 1;

        Assert.True(_file.Spectrum(Site("brow"), from + 0.05, from + 0.45, CancellationToken.None)!.IsFlat);
        Assert.Null(_file.Spectrum(Site("cheek"), 2, 2.1, CancellationToken.None));
    }

    [Fact]
    public void BehindAHighPassADriftIsGoneFromTheFirstSampleShown()
    {
        Channel cheek = _file.ChannelOf(_result.Channels[0].Label)!;
        SignalExcerpt raw = _file.Excerpt(cheek, 2, 12, 500, CancellationToken.None);
        SignalExcerpt behind = _file.Excerpt(cheek, 2, 12, 500, CancellationToken.None, ScoringFilter.Ordinary);
        SignalExcerpt start = _file.Excerpt(cheek, 0, 1, 500, CancellationToken.None, ScoringFilter.Ordinary);

        // 3000 µV/min: 500 in ten seconds.
        Assert.InRange(raw.Trace.Greatest.Max() - raw.Trace.Least.Min(), 450, 600);
        Assert.All(behind.Trace.Greatest.Concat(behind.Trace.Least).Concat(start.Trace.Greatest).Concat(start.Trace.Least), value => Assert.InRange(value, -40, 40));
        Assert.Equal(0, behind.Level);
    }

    [Fact]
    public void BehindAFilterTheSpectrumIsWhatItLetsThrough()
    {
        WindowSpectrum raw = _file.Spectrum(Site("cheek"), 2, 6, CancellationToken.None)!;
        WindowSpectrum behind = _file.Spectrum(Site("cheek"), 2, 6, CancellationToken.None, ScoringFilter.Ordinary)!;

        Assert.All([5, 20, 100], bin => Assert.Equal(ScoringFilter.Ordinary.PowerAt(bin, 2000), behind.Density[bin] / raw.Density[bin], 9));
    }

    private static SessionPlan Faulty(SessionPlan plan) => plan with
    {
        Trials = plan.Trials.SetItem(4, plan.Trials[4] with { Activity = [new SiteActivity("eye", 110)] }),
        Faults =
        [
            new ChannelAudit.Synthesis.Faults.Drift("cheek", 3000),
            new HeaderRail("eye", 200),
            new Flatline("brow") { Span = new FaultSpan(plan.Trials[6].OnsetS + 1, plan.Trials[6].OnsetS + 1.5M) },
            new RecordingGap { Span = new FaultSpan(plan.Trials[8].OnsetS + 1, plan.Trials[8].OnsetS + 1.4M) },
        ],
    };

    private Channel Site(string name) => _file.ChannelOf(_result.Channels.First(channel => string.Equals(channel.Name, name, StringComparison.Ordinal)).Label)!;
}
