using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Setup;

namespace ChannelAudit.Survey;

/// <summary>What the whole of a recording says of its channels before any window is measured: whether they are raw, the mains, the frames of their spectra.</summary>
/// <param name="Channels">The audited channels, held against their samples, with their names.</param>
/// <param name="Samples">Sampled spectra, one a channel.</param>
/// <param name="Mains">The mains frequency.</param>
/// <param name="Frames">One frame a channel.</param>
internal sealed record RecordingFrames(
    ImmutableArray<(Channel Channel, string Name)> Channels, ImmutableArray<SpectrumSample> Samples, MainsResult Mains, ImmutableArray<SpectralFrame> Frames)
{
    /// <summary>Finds it.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">Its audited channels and their names.</param>
    /// <param name="setup">May state the mains frequency and the filter of scoring.</param>
    /// <param name="cancellation">Checked often.</param>
    public static RecordingFrames Of(
        Recording recording, ImmutableArray<(Channel Channel, string Name)> channels, StudySetup setup, CancellationToken cancellation)
    {
        ImmutableArray<Channel> all = [.. channels.Select(pair => pair.Channel)];
        ImmutableArray<Channel> stated = all;
        SpectrumSample[] sampled = new SpectrumSample[stated.Length];
        SideBySide.Each(recording, sampled.Length, reader => i => sampled[i] = SpectrumSample.Of(reader, stated[i], cancellation));
        ImmutableArray<SpectrumSample> sample = ImmutableCollectionsMarshal.AsImmutableArray(sampled);
        all = InputCheck.Of(recording, all, sample);
        MainsResult mains = MainsFinder.Find(recording, all, sample, setup.Recording);
        ScoringFilter filter = ScoringFilter.Of(setup.Scoring);
        return new RecordingFrames(
            [.. channels.Zip(all, (named, checkedOne) => (checkedOne, named.Name))],
            sample,
            mains,
            [.. all.Select((channel, i) => SpectralFrame.Of(channel, mains.NominalHz, mains.Hz, Notches.Of(channel, sample[i], mains), filter))]);
    }
}
