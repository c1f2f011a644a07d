using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Survey;

namespace ChannelAudit.Views;

/// <summary>What must be known of a whole channel before a stretch of it can be looked at as an audit does: it is gone through once, when it is first asked for.</summary>
/// <param name="recording">The recording.</param>
/// <param name="channel">One of its channels.</param>
internal sealed class ShownChannel(Recording recording, Channel channel)
{
    private (Rails Rails, FlatLimits Flat)? _limits;
    private ImmutableArray<double>? _harmonicsHz;

    /// <summary>Where samples of a window are at fault.</summary>
    /// <param name="window">The window.</param>
    /// <param name="joinWithin">Stretches at most this many samples apart are given as one.</param>
    /// <param name="cancel">Checked for every block.</param>
    public ShownFaults Faults(Window window, long joinWithin, CancellationToken cancel)
    {
        (Rails rails, FlatLimits limits) = _limits ??= Limits(cancel);
        int carry = Math.Max(limits.HeldRun, limits.StillLength);
        SampleRanges clipped = new(joinWithin);
        SampleRanges flat = new(joinWithin);
        ClippingCount clipping = new(rails, clipped);

        // A flat stretch is told by its length: what lies beyond the edges of the window counts for it.
        Window wider = Window.Of(channel.Stretches, window.Start - carry, window.End + carry);
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, wider.Pieces, cancel, carry))
        {
            clipping.Add(block.Samples.Span, block.Start);
            FlatStretches.AddTo(flat, block.WithCarry.Span, block.CarryStart, limits, rails);
            if (block.EndsPiece)
            {
                clipping.Break(block.End);
            }
        }

        return new ShownFaults(rails.Lower, rails.Upper, FaultMarks.In(window, clipped, flat, channel.Rate.Value));
    }

    /// <summary>The harmonics of the mains that count, in Hz.</summary>
    /// <param name="mains">The mains frequency that the audit used.</param>
    /// <param name="cancel">Checked for every run of seconds.</param>
    public ImmutableArray<double> HarmonicsHz(MainsResult mains, CancellationToken cancel) => _harmonicsHz ??=
    [
        .. SpectralFrame.Of(channel, mains.NominalHz, mains.Hz, Notches.Of(channel, SpectrumSample.Of(recording, channel, cancel), mains))
            .Harmonics.Select(window => window.Harmonic * mains.Hz),
    ];

    private (Rails Rails, FlatLimits Flat) Limits(CancellationToken cancel)
    {
        TimeSurveyor surveyor = new(channel);
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, channel.Stretches, cancel, TimeSurveyor.CarryOf(channel)))
        {
            surveyor.Add(block);
        }

        TimeSurvey survey = surveyor.Finish();
        return (survey.Rails, survey.FlatLimits);
    }
}
