using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Findings.Sessions;

/// <summary>Holds the trials against the protocol of the setup: missing, surplus, double, misplaced. It changes no verdict.</summary>
/// <remarks>
/// Looked at are the trials that the protocol lists by label, and those that are neither rest nor a task. A trial whose onset comes sooner behind the one before than
/// <c>gap_s</c> allows is a double and counts no further. Where an order is stated the labels are laid along it (<see cref="TrialAlignment"/>); else only numbers are compared.
/// </remarks>
internal sealed class ProtocolCheck
{
    private readonly ProtocolSetup protocol;
    private readonly decimal endS;
    private readonly ImmutableArray<Trial> all;
    private readonly Departure missing = new("missing", "a trigger that was not sent or not seen, or a session that was cut short");
    private readonly Departure surplus = new("surplus", "a round that was begun again, events of another session, or a label that is written otherwise in the setup");
    private readonly Departure twice = new("double", "a trigger that bounces, a key that was pressed twice, or events that were written twice");
    private readonly Departure misplaced = new("misplaced", "another order or version of the stimulus program, a pause, or a clock that is off");

    private ProtocolCheck(ProtocolSetup protocol, ImmutableArray<Trial> trials, decimal endS)
    {
        this.protocol = protocol;
        this.endS = endS;
        HashSet<string> listed = [.. protocol.Trials.Select(one => one.Label)];
        all = [.. trials.Where(trial => trial.Role == TrialRole.Scored || (trial.Label is { } label && listed.Contains(label)))];
    }

    /// <summary>One finding for each kind of departure.</summary>
    /// <param name="input">Trials, where they come from, and the setup.</param>
    /// <param name="channels">The names of all channels.</param>
    /// <param name="durationS">Length of the recording.</param>
    public static ImmutableArray<Finding> Of(AuditInput input, ImmutableArray<string> channels, double durationS)
    {
        ProtocolCheck check = new(input.Setup.Protocol ?? new ProtocolSetup(), input.Trials, (decimal)durationS);
        check.LookAtDoubles(input);
        if (input.Setup.Protocol is not null)
        {
            check.Look(string.Equals(input.TrialsFrom, "blocks", StringComparison.Ordinal));
        }

        return [.. new[] { check.missing, check.surplus, check.twice, check.misplaced }.Select(one => one.Finding(channels)).OfType<Finding>()];
    }

    private void LookAtDoubles(AuditInput input)
    {
        foreach (Events.RecordedEvent one in input.Doubles)
        {
            Trial? before = input.Trials.LastOrDefault(trial => trial.OnsetS <= one.OnsetS);
            string label = one.Label is null ? string.Empty : $" '{OneLine.Of(one.Label)}'";
            string where = before is null ? string.Empty : string.Create(
                CultureInfo.InvariantCulture, $", {(one.OnsetS - before.OnsetS) * 1000:0.#} ms after {Departure.Name(before)}");
            twice.Add($"a trigger{label} at {Departure.Time(one.OnsetS)}{where}, no trial of its own", one.OnsetS, one.OnsetS);
        }
    }

    private void Look(bool isBlocks)
    {
        if (isBlocks)
        {
            missing.Add("the recording has no events, so that its trials are blocks of time and the protocol could not be checked", 0, endS);
            return;
        }

        ImmutableArray<Trial> single = Single();
        ImmutableArray<Trial> late = Late(single);
        if (protocol.Sequence.IsEmpty || !TrialAlignment.CanDo(protocol.Sequence.Length, single.Length))
        {
            Count(single);
        }
        else
        {
            Align(single);
        }

        Pauses(late);
        Durations(single);
        foreach (Trial trial in single.Where(trial => trial.WindowFromS < 0 || trial.WindowToS > endS + 0.001m))
        {
            misplaced.Add(trial, "reaches beyond the recording");
        }
    }

    private ImmutableArray<Trial> Single()
    {
        ImmutableArray<Trial>.Builder single = ImmutableArray.CreateBuilder<Trial>();
        Trial? before = null;
        foreach (Trial trial in all)
        {
            if (protocol.GapS is { } gap && before is not null && trial.OnsetS - before.OnsetS < gap.FromS)
            {
                string after = before.Number.ToString(CultureInfo.InvariantCulture);
                twice.Add(trial, $"comes {Departure.Time(trial.OnsetS - before.OnsetS)} after trial {after}, sooner than {Departure.Time(gap.FromS)}");
            }
            else
            {
                single.Add(trial);
            }

            before = trial;
        }

        return single.ToImmutable();
    }

    // With rest or a task between them two trials may be as far apart as they like.
    private ImmutableArray<Trial> Late(ImmutableArray<Trial> single)
    {
        if (protocol.GapS is not { } gap)
        {
            return [];
        }

        HashSet<int> doubles = [.. all.Except(single).Select(trial => trial.Number)];
        bool Follows(Trial first, Trial second) => Enumerable.Range(first.Number + 1, second.Number - first.Number - 1).All(doubles.Contains);
        return
        [
            .. single.Zip(single.Skip(1))
                .Where(pair => pair.Second.OnsetS - pair.First.OnsetS > gap.ToS && Follows(pair.First, pair.Second))
                .Select(pair => pair.Second),
        ];
    }

    private void Count(ImmutableArray<Trial> single)
    {
        if (protocol.Trials.IsEmpty)
        {
            return;
        }

        foreach (ExpectedTrials one in protocol.Trials)
        {
            int found = single.Count(trial => Is(trial, one.Label));
            if (found < one.Count)
            {
                missing.Add(Of(one.Count - found, one), 0, endS);
            }
            else if (found > one.Count)
            {
                surplus.Add(string.Create(CultureInfo.InvariantCulture, $"{found} trials of '{OneLine.Of(one.Label)}', {one.Count} expected"), 0, endS);
            }
        }

        foreach (Trial trial in single.Where(trial => !IsListed(trial)))
        {
            surplus.Add(trial, "is no condition of the protocol");
        }
    }

    private void Align(ImmutableArray<Trial> single)
    {
        TrialAlignment along = TrialAlignment.Of(protocol.Sequence, [.. single.Select(trial => trial.Label)]);
        int[] exchanged = Exchanged(single);

        // Two neighbours exchanged are two wrong places, or one trial moved by one: the places say more.
        if (exchanged.Length > 0 && exchanged.Length <= 2 * along.Extra.Length)
        {
            foreach (int place in exchanged)
            {
                misplaced.Add(single[place], $"is out of order: '{OneLine.Of(protocol.Sequence[place])}' expected here");
            }

            return;
        }

        List<int> extra = [.. along.Extra];
        for (int place = 0; place < protocol.Sequence.Length; place++)
        {
            if (along.FoundOf[place] >= 0)
            {
                continue;
            }

            string label = protocol.Sequence[place];
            int moved = extra.FindIndex(found => Is(single[found], label));
            (string where, decimal fromS, decimal toS) = Place(along, single, place);
            if (moved >= 0)
            {
                misplaced.Add(single[extra[moved]], $"is out of order: expected {where}");
                extra.RemoveAt(moved);
            }
            else
            {
                missing.Add($"{Of(1, protocol.Trials.First(one => string.Equals(one.Label, label, StringComparison.Ordinal)))}, {where}", fromS, toS);
            }
        }

        foreach (int found in extra)
        {
            surplus.Add(single[found], IsListed(single[found]) ? "has no place in the order" : "is no condition of the protocol");
        }
    }

    /// <summary>Where labels differ place by place, when all are there and only exchanged; empty when the numbers differ.</summary>
    private int[] Exchanged(ImmutableArray<Trial> single) =>
        protocol.Trials.All(one => single.Count(trial => Is(trial, one.Label)) == one.Count) && single.Length == protocol.Sequence.Length
            ? [.. Enumerable.Range(0, single.Length).Where(place => !Is(single[place], protocol.Sequence[place]))]
            : [];

    /// <summary>Where an expected trial should stand: behind the one found before it, or anywhere in a run of its own label.</summary>
    private (string Words, decimal FromS, decimal ToS) Place(TrialAlignment along, ImmutableArray<Trial> single, int place)
    {
        int first = place;
        while (first > 0 && string.Equals(protocol.Sequence[first - 1], protocol.Sequence[place], StringComparison.Ordinal))
        {
            first--;
        }

        Trial? FirstOf(IEnumerable<int> places) => places.Select(i => along.FoundOf[i]).Where(found => found >= 0).Select(found => single[found]).FirstOrDefault();
        Trial? before = FirstOf(Enumerable.Range(0, place).Reverse());
        Trial? after = FirstOf(Enumerable.Range(place + 1, protocol.Sequence.Length - place - 1));
        Trial? start = FirstOf(Enumerable.Range(first, place - first));
        decimal fromS = start?.OnsetS ?? before?.OnsetS ?? 0;
        decimal toS = after?.OnsetS ?? endS;
        if (start is not null && before is not null && start != before)
        {
            string among = string.Create(CultureInfo.InvariantCulture, $"somewhere among trials {start.Number} to {before.Number}");
            return (among, fromS, Math.Max(fromS, toS));
        }

        string words = before is not null ? $"after {Departure.Name(before)}" : after is not null ? $"before {Departure.Name(after)}" : "anywhere";
        return (words, fromS, Math.Max(fromS, toS));
    }

    private void Pauses(ImmutableArray<Trial> late)
    {
        foreach (Trial trial in late)
        {
            Trial before = all.Last(other => other.Number < trial.Number);
            string words = string.Create(
                CultureInfo.InvariantCulture,
                $"comes {Departure.Time(trial.OnsetS - before.OnsetS)} after trial {before.Number}, later than {Departure.Time(protocol.GapS!.Value.ToS)}");
            if (missing.IsAny)
            {
                missing.Add($"the place may be the pause before {Departure.Name(trial)}, which {words}", before.OnsetS, trial.OnsetS);
            }
            else
            {
                misplaced.Add(trial, words);
            }
        }
    }

    private void Durations(ImmutableArray<Trial> single)
    {
        Trial[] limited = [.. single.Where(trial => protocol.DurationOf(trial.Label) is not null)];
        if (limited.Length > 0 && limited.All(trial => trial.DurationS == 0))
        {
            misplaced.Add("durations could not be checked: the events are instants", 0, endS);
            return;
        }

        foreach (Trial trial in limited)
        {
            TimeRange allowed = protocol.DurationOf(trial.Label)!.Value;
            if (!allowed.Holds(trial.DurationS))
            {
                misplaced.Add(trial, $"lasts {Departure.Time(trial.DurationS)}, not {Departure.Time(allowed.FromS)} to {Departure.Time(allowed.ToS)}");
            }
        }
    }

    private bool IsListed(Trial trial) => protocol.Trials.Any(one => Is(trial, one.Label));

    private static bool Is(Trial trial, string label) => string.Equals(trial.Label, label, StringComparison.Ordinal);

    private static string Of(int lost, ExpectedTrials one) => string.Create(CultureInfo.InvariantCulture, $"{lost} of {one.Count} '{OneLine.Of(one.Label)}'");
}
