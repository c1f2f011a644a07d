using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Events;

/// <summary>Makes events of the codes of a trigger channel while its samples go by.</summary>
/// <remarks>
/// The lines of a parallel port do not change at the same instant: where one code follows another without the base level between them, sooner than the least
/// distance, the later one is the code, at the onset of the first.
/// </remarks>
internal sealed class TriggerDecoder
{
    private readonly Rational rate;
    private readonly TriggerSetup rules;
    private readonly double? level;
    private readonly List<RecordedEvent> events = [];
    private readonly List<RecordedEvent> doubles = [];
    private readonly SortedDictionary<double, int> unlisted = [];
    private double? previous;
    private RecordedEvent? last;
    private (long At, string Label)? open;

    /// <summary>Starts at the base level.</summary>
    /// <param name="rate">Samples per second.</param>
    /// <param name="rules">Edge, labels, least distance.</param>
    /// <param name="level">The base level; null when every value is a code, so that the first one is where the channel stands already.</param>
    public TriggerDecoder(Rational rate, TriggerSetup rules, double? level)
    {
        this.rate = rate;
        this.rules = rules;
        this.level = level;
        previous = level;
    }

    /// <summary>The next sample.</summary>
    public void Add(long index, double now)
    {
        if (previous is { } before && now != before)
        {
            Change(index, before, now);
        }

        previous = now;
    }

    /// <summary>The events.</summary>
    /// <param name="file">The recording.</param>
    /// <param name="channel">The channel's label.</param>
    /// <param name="end">Index behind the last sample.</param>
    public TrialEvents Finish(string file, string channel, long end)
    {
        Close(end);
        string strangers = OneLine.List(unlisted.Select(code =>
            string.Create(CultureInfo.InvariantCulture, $"{code.Key:G9} ({code.Value} {(code.Value == 1 ? "time" : "times")})")));
        ImmutableArray<Warning> warnings = unlisted.Count == 0
            ? []
            : [new Warning(file, $"channel '{OneLine.Of(channel)}'", $"codes that are not in trigger_codes make no event: {strangers}")];
        return new TrialEvents(TrialSource.Trigger, file, [.. events], warnings) { Doubles = [.. doubles] };
    }

    private void Change(long index, double before, double now)
    {
        string? ends = LabelOf(before);
        string? begins = LabelOf(now);
        if (begins is null && now != level)
        {
            unlisted[now] = unlisted.GetValueOrDefault(now) + 1;
        }

        switch (rules.Edge)
        {
            case TriggerEdge.Falling when ends is not null:
                Happens(Instant(index, ends), isDirect: false);
                break;
            case TriggerEdge.Rising when begins is not null:
                Happens(Instant(index, begins), isDirect: ends is not null);
                break;
            case TriggerEdge.Both when (begins ?? (rules.Codes.IsEmpty ? Number(now) : null)) is { } label:
                Happens(Instant(index, label), isDirect: false);
                break;
            case TriggerEdge.Held:
                Close(index);
                open = begins is null ? null : (index, begins);
                break;
            default:
                break;
        }
    }

    private void Close(long end)
    {
        if (open is { } held)
        {
            Lasts(new RecordedEvent(Seconds(held.At), Seconds(end) - Seconds(held.At), held.Label));
            open = null;
        }
    }

    /// <summary>An event that has ended: what bounces or is set line by line belongs to the one before.</summary>
    private void Lasts(RecordedEvent found)
    {
        if (events.Count > 0 && rules.LeastMs is { } least)
        {
            RecordedEvent before = events[^1];
            decimal pauseMs = (found.OnsetS - before.OnsetS - before.DurationS!.Value) * 1000;
            bool isSame = string.Equals(before.Label, found.Label, StringComparison.Ordinal) && pauseMs < least;
            if (isSame || (pauseMs == 0 && before.DurationS * 1000 < least))
            {
                if (isSame)
                {
                    doubles.Add(found);
                }

                events[^1] = before with { Label = found.Label, DurationS = found.OnsetS + found.DurationS - before.OnsetS };
                return;
            }
        }

        Happens(found, isDirect: false);
    }

    private void Happens(RecordedEvent found, bool isDirect)
    {
        bool isSoon = rules.LeastMs is { } least && last is not null && (found.OnsetS - last.OnsetS) * 1000 < least;
        if (isSoon && isDirect && events.Count > 0 && events[^1] == last)
        {
            last = events[^1] = last! with { Label = found.Label };
            return;
        }

        (isSoon ? doubles : events).Add(found);
        last = found;
    }

    private string? LabelOf(double code)
    {
        if (rules.Codes.IsEmpty)
        {
            return code == level ? null : Number(code);
        }

        return code == Math.Floor(code) && rules.Codes.TryGetValue((long)code, out string? label) ? label : null;
    }

    private RecordedEvent Instant(long index, string label) => new(Seconds(index), 0, label);

    private decimal Seconds(long index) => (decimal)index * rate.Denominator / rate.Numerator;

    private static string Number(double code) => code.ToString("G9", CultureInfo.InvariantCulture);
}
