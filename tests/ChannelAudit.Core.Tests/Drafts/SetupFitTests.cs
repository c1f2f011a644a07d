using ChannelAudit.Drafts;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Drafts;

public sealed class SetupFitTests : IDisposable
{
    private const string Site = "[[sites]]\nname = \"cheek\"\nchannel = \"EMG\"\n";

    private readonly TemporaryFolder _folder = new();
    private readonly string _path;

    public SetupFitTests()
    {
        _path = _folder.In("P07.edf");
        EdfWriter.Write(_path, new EdfContent([Signal("EMG"), Signal("Status")], 9)
        {
            Annotations = [new(0, 2, "rest"), new(2, 2, "raise lip corner"), new(4, 2, "raise lip corner"), new(7, null, "cue")],
        });
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void WhatASetupNamesIsCounted()
    {
        SetupFit fit = Fit($"{Site}task = \"raise lip corner\"\n[trials]\nrest = [\"rest\"]\n");

        Assert.Equal(("P07.edf", 1, TrialSource.Annotations, 3), (fit.RecordingFile, fit.Channels, fit.Source, fit.Trials));
        Assert.Equal([new("rest", "rest", 1), new("cheek", "raise lip corner", 2)], fit.Labels.ToArray());
    }

    [Fact]
    public void ATaskThatNeverOccursIsNamedWithThoseThatDo() => Faults.AreExactly(
        "setup.toml, site 'cheek', task: no trial in P07.edf is labelled 'raise lip korner'",
        "did you mean 'raise lip corner'? labels there: rest, raise lip corner",
        () => Fit($"{Site}task = \"raise lip korner\"\n"));

    [Fact]
    public void ARestThatNeverOccursIsNamedWithThoseThatDo() => Faults.AreExactly(
        "setup.toml, [trials] rest: no trial in P07.edf is labelled 'quiet'",
        "labels there: rest, raise lip corner",
        () => Fit("[trials]\nrest = [\"rest\", \"quiet\"]\n"));

    [Fact]
    public void ALabelWithoutADurationAsksForAWindow()
    {
        const string task = Site + "task = \"cue\"\n";

        Faults.AreExactly(
            "setup.toml, site 'cheek', task: 'cue' has no duration in P07.edf, so that it makes no trial",
            "state under [trials] which part after the onset is scored, for example window = [0.0, 3.0]",
            () => Fit(task));
        Assert.Equal(1, Assert.Single(Fit(task + "[trials]\nwindow = [0.0, 1.0]\n").Labels).Trials);
    }

    [Fact]
    public void BlocksHaveNoLabels() => Faults.AreExactly(
        "setup.toml, [trials] rest: no trial in P07.edf is labelled 'rest'",
        "no trial has a label: see where the trials come from, [trials] from",
        () => Fit("[trials]\nfrom = \"blocks\"\nrest = [\"rest\"]\n"));

    [Fact]
    public void AChannelThatIsNotThereIsRefused() => Faults.AreExactly(
        "setup.toml, site 'brow': channel 'EMG 2' is not in P07.edf",
        "did you mean 'EMG'? labels there: EMG, Status, EDF Annotations",
        () => Fit("[[sites]]\nname = \"brow\"\nchannel = \"EMG 2\"\n"));

    [Fact]
    public void ASiteOnAChannelThatIsNotAuditedIsRefused()
    {
        var fault = Assert.Throws<ChannelAuditException>(() => Fit(Site + "[[sites]]\nname = \"brow\"\nchannel = \"Status\"\n"));

        Assert.StartsWith("setup.toml, site 'brow': channel 'Status' in P07.edf cannot be audited: ", fault.Message, StringComparison.Ordinal);
        Assert.Equal(FaultKind.Usage, fault.Kind);
    }

    private static EdfSignalContent Signal(string label) => new(label, -500, 500, 4, (first, samples) =>
    {
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = 10 * (first + i);
        }
    });

    private SetupFit Fit(string toml) => SetupFit.Of(SetupFile.Parse(toml, "setup.toml"), _path);
}
