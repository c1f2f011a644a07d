using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Survey;

namespace ChannelAudit.Excerpts;

/// <summary>A recording of which parts are taken. Dispose it to close the file.</summary>
public sealed class ExcerptSource : IDisposable
{
    private readonly PreparedRecording _prepared;
    private readonly RecordingFrames _frames;

    private ExcerptSource(PreparedRecording prepared, RecordingFrames frames) => (_prepared, _frames) = (prepared, frames);

    /// <summary>What the whole recording says of each audited channel, in file order.</summary>
    public ImmutableArray<ChannelFacts> Channels =>
        [.. _frames.Channels.Select((channel, i) => ChannelFacts.Of(channel.Channel, channel.Name, _frames.Frames[i], _prepared.Setup.Scoring))];

    /// <summary>Opens a recording.</summary>
    /// <param name="entry">The file and its id.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <param name="cancellation">Checked often.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, or setup or events do not fit it.</exception>
    public static ExcerptSource Open(RecordingEntry entry, StudySetup setup, string? eventsFile, CancellationToken cancellation)
    {
        PreparedRecording? prepared = null;
        try
        {
            prepared = PreparedRecording.Open(entry, setup, eventsFile);
            ExcerptSource source = new(
                prepared, RecordingFrames.Of(prepared.Recording, AuditedChannels.Of(prepared.Recording, prepared.Setup), prepared.Setup, cancellation));
            prepared = null;
            return source;
        }
        finally
        {
            prepared?.Dispose();
        }
    }

    /// <summary>What is stored of a channel between two times.</summary>
    /// <param name="channel">Position in <see cref="Channels"/>.</param>
    /// <param name="fromS">Start in seconds from the first stored sample; it may lie before it.</param>
    /// <param name="toS">End; it may lie behind the last one.</param>
    public Excerpt Take(int channel, decimal fromS, decimal toS) =>
        Excerpt.Of(_prepared.Recording, _frames.Channels[channel].Channel, fromS, toS);

    /// <inheritdoc/>
    public void Dispose() => _prepared.Dispose();
}
