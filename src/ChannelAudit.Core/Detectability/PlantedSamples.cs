using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Detectability;

/// <summary>The samples of a recording with faults planted while they are read: nothing is copied, and the file stays as it is.</summary>
/// <remarks>Changed samples are rounded to the channel's steps and stop at its rails, as a converter would have it.</remarks>
internal sealed class PlantedSamples : ISampleSource
{
    private readonly Recording recording;
    private readonly ILookup<int, PlantEdit> edits;

    private PlantedSamples(Recording recording, IEnumerable<PlantEdit> edits)
    {
        this.recording = recording;
        this.edits = edits.Where(edit => edit.Change is not null).ToLookup(edit => edit.Channel);
    }

    /// <summary>A recording with faults; its samples are those of the original, which stays open.</summary>
    /// <param name="recording">The original.</param>
    /// <param name="edits">What is done to it.</param>
    public static Recording In(Recording recording, IReadOnlyList<PlantEdit> edits) => new()
    {
        FileName = recording.FileName,
        Format = recording.Format,
        Channels = [.. recording.Channels.Select(channel => channel with { Stretches = Without(channel, edits) })],
        Annotations = recording.Annotations,
        Warnings = recording.Warnings,
        DurationS = recording.DurationS,
        Samples = new PlantedSamples(recording, edits),
    };

    /// <inheritdoc/>
    public void Read(int channel, long start, Span<double> destination)
    {
        recording.Samples.Read(channel, start, destination);
        Channel own = recording.Channels[channel];
        foreach (PlantEdit edit in edits[channel])
        {
            foreach (Stretch stretch in own.Stretches)
            {
                // In indices of stored samples.
                long shift = stretch.StoredStart - stretch.Start;
                long from = Math.Max(Math.Max(edit.From, stretch.Start) + shift, start);
                long to = Math.Min(Math.Min(edit.To, stretch.End) + shift, start + destination.Length);
                if (from < to)
                {
                    Span<double> part = destination.Slice((int)(from - start), (int)(to - from));
                    Change(edit, own, from, from - shift, part);
                }
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // Whoever opened the original closes it.
    }

    private void Change(PlantEdit edit, Channel channel, long stored, long at, Span<double> part)
    {
        double[] before = part.ToArray();
        edit.Change!(recording.Samples, at, stored, part);
        for (int i = 0; i < part.Length; i++)
        {
            double change = part[i] - before[i];
            double rounded = channel.Step > 0 ? Math.Round(change / channel.Step) * channel.Step : change;
            part[i] = Math.Clamp(before[i] + rounded, channel.LowerRail ?? double.NegativeInfinity, channel.UpperRail ?? double.PositiveInfinity);
        }
    }

    private static ImmutableArray<Stretch> Without(Channel channel, IReadOnlyList<PlantEdit> edits)
    {
        List<Stretch> left = [.. channel.Stretches];
        foreach (PlantEdit edit in edits.Where(edit => edit.Change is null && edit.Channel == channel.Index))
        {
            left = [.. left.SelectMany(stretch => Without(stretch, edit.From, edit.To))];
        }

        return [.. left];
    }

    private static IEnumerable<Stretch> Without(Stretch stretch, long from, long to)
    {
        if (to <= stretch.Start || from >= stretch.End)
        {
            yield return stretch;
            yield break;
        }

        if (from > stretch.Start)
        {
            yield return stretch with { Length = from - stretch.Start };
        }

        if (to < stretch.End)
        {
            yield return new Stretch(to, stretch.End - to, stretch.StoredStart + (to - stretch.Start));
        }
    }
}
