using System.Collections.Immutable;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Raters;

/// <summary>Puts labels to the trials and channels of one recording.</summary>
internal sealed class LabelledRecording
{
    private readonly RecordingResult _recording;
    private readonly ImmutableArray<string> _raters;
    private readonly SortedDictionary<(int Channel, int Trial), Grade?[]> _labels = [];

    /// <summary>Takes a result and the names of all raters.</summary>
    public LabelledRecording(RecordingResult recording, ImmutableArray<string> raters) => (_recording, _raters) = (recording, raters);

    /// <summary>Labels of no channel or trial, with the cause.</summary>
    public List<(GivenLabel Label, string Cause)> Unmatched { get; } = [];

    /// <summary>Labels that a later one of the same rater replaced.</summary>
    public int Replaced { get; private set; }

    /// <summary>Adds labels; one of all channels is one of each.</summary>
    public void Take(IEnumerable<GivenLabel> labels)
    {
        foreach (GivenLabel label in labels)
        {
            FoundPlace found = FoundPlace.Of(label.Place, _recording);
            if (found.Cause is { } cause)
            {
                Unmatched.Add((label, cause));
            }

            int rater = _raters.IndexOf(label.Rater);
            foreach (ChannelResult channel in found.Channels)
            {
                // A whole channel stands before its trials.
                (int Channel, int Trial) key = (_recording.Channels.IndexOf(channel), found.Trial ?? 0);
                if (!_labels.TryGetValue(key, out Grade?[]? given))
                {
                    given = new Grade?[_raters.Length];
                    _labels.Add(key, given);
                }

                Replaced += given[rater] is null ? 0 : 1;
                given[rater] = label.Grade;
            }
        }
    }

    /// <summary>What was labelled: channels in file order, each before its trials.</summary>
    public IEnumerable<RatedThing> Things()
    {
        foreach (((int place, int trial), Grade?[] labels) in _labels)
        {
            ChannelResult channel = _recording.Channels[place];
            CellResult? cell = trial == 0 ? null : channel.Cells.First(one => one.Trial == trial);
            yield return new RatedThing(
                _recording.Id, channel.Name, cell?.Trial, cell?.Verdict ?? channel.Verdict, [.. labels], cell?.Measures ?? channel.Measures);
        }
    }
}
