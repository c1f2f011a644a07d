using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Makes a recording of a spooled table.</summary>
internal static class TextRecording
{
    /// <summary>Makes the recording, which then owns the spool.</summary>
    /// <exception cref="ChannelAuditException">When no rate is known or none holds.</exception>
    public static Recording Make(string file, SpooledTable table, Preamble preamble, ReadOptions options, WarningList warnings)
    {
        TimeAxis axis = Axis(file, table, preamble, options, warnings);
        ImmutableArray<ColumnPlan> listed = [.. table.Plans.Where(plan => plan.Role != ColumnRole.Time && plan.Role != ColumnRole.Counter)];
        ImmutableArray<string> labels = UniqueLabels([.. listed.Select(plan => plan.Name)]);
        ImmutableArray<ImmutableArray<RowRun>> runs =
            [.. listed.Select(plan => plan.Role == ColumnRole.Text ? [] : table.Tallies[plan.Position].Finish(table.Spool.Rows))];
        ImmutableArray<Channel> channels = [.. listed.Select((plan, index) => MakeChannel(plan, index, labels[index], table.Tallies[plan.Position], axis, runs[index]))];
        if (channels.All(channel => channel.NotAudited is not null))
        {
            throw TextErrors.NoChannel(file);
        }

        WarnOfCells(table, listed, warnings);
        RowStart last = axis.Starts[^1];
        return new Recording
        {
            FileName = file,
            Format = "text",
            Channels = channels,
            Warnings = warnings.ToImmutable(),
            DurationS = axis.Rate.SecondsAt(last.Timeline + table.Spool.Rows - last.Row),
            Samples = new SpooledSamples(table.Spool, [.. listed.Select(plan => table.SpoolColumns[plan.Position])], runs),
        };
    }

    private static TimeAxis Axis(string file, SpooledTable table, Preamble preamble, ReadOptions options, WarningList warnings)
    {
        (decimal RateHz, string Source)? stated = preamble.RateHz is { } own ? (own, "preamble") : options.SamplingHz is { } setup ? (setup, "setup") : null;
        if (stated is { RateHz: < RecordingBounds.LeastRateHz or > RecordingBounds.MostRateHz } impossible)
        {
            throw TextErrors.BadRate(file, (double)impossible.RateHz);
        }

        ColumnPlan? plan = table.Plans.FirstOrDefault(column => column.Role is ColumnRole.Time or ColumnRole.Counter);
        if (plan is { IsGuessed: true })
        {
            warnings.Add("header", $"\"{plan.RawLabel}\" rises evenly: taken as {(plan.Role == ColumnRole.Time ? "time" : "a count of samples")}, not as a channel");
        }

        if (plan is { Role: ColumnRole.Time })
        {
            return new TimeAxisFinder(file, table, plan, warnings).FromTimes(stated);
        }

        if (stated is not { } rate)
        {
            throw plan is null ? TextErrors.NoRate(file) : TextErrors.CounterWithoutRate(file, plan.RawLabel);
        }

        if (preamble.RateHz is not null)
        {
            warnings.Add("preamble", string.Create(CultureInfo.InvariantCulture, $"sampling rate {rate.RateHz} Hz taken from the lines above the table"));
        }

        if (preamble.RateHz is not null && options.SamplingHz is { } other && other != rate.RateHz)
        {
            warnings.Add("preamble", string.Create(CultureInfo.InvariantCulture, $"the setup states {other} Hz; the file's own rate is used"));
        }

        return plan is null ? TimeAxis.Even(Rational.FromDecimal(rate.RateHz)) : new TimeAxisFinder(file, table, plan, warnings).FromCounter(Rational.FromDecimal(rate.RateHz));
    }

    private static Channel MakeChannel(ColumnPlan plan, int index, string label, ColumnTally tally, TimeAxis axis, ImmutableArray<RowRun> runs) => new()
    {
        Index = index,
        Label = label,
        // The unit behind a name is kept as the unit; a setup names the channel without it.
        RawLabel = plan.Name,
        NotAudited = plan.NotAudited ?? (runs.IsEmpty ? "no number in the whole file" : null),
        FileUnit = plan.Unit?.Text ?? string.Empty,
        IsMicrovolts = plan.Role == ColumnRole.Signal && plan.Unit is null or { Kind: TextUnitKind.Voltage },
        Rate = axis.Rate,
        Step = tally.Step * UnitRules.Scale(plan),
        Stretches = axis.Place(runs),
    };

    private static void WarnOfCells(SpooledTable table, ImmutableArray<ColumnPlan> listed, WarningList warnings)
    {
        if (table.BlankLine > 0)
        {
            warnings.AddLine(table.BlankLine, "blank lines between rows are passed over");
        }

        foreach (ColumnPlan plan in listed.Where(plan => plan is { Role: ColumnRole.Marker, IsGuessed: true }))
        {
            warnings.Add("header", $"\"{plan.RawLabel}\" is not audited: {plan.NotAudited}");
        }

        foreach (ColumnPlan plan in listed.Where(plan => plan.Role == ColumnRole.Signal && table.Tallies[plan.Position].Missing > 0))
        {
            ColumnTally tally = table.Tallies[plan.Position];
            string noun = tally.Missing == 1 ? "sample" : "samples";
            warnings.AddLine(tally.FirstMissingLine, string.Create(CultureInfo.InvariantCulture, $"\"{plan.RawLabel}\": {tally.Missing} {noun} missing, the first here"));
        }
    }

    // The second EMG is EMG#2.
    private static ImmutableArray<string> UniqueLabels(ImmutableArray<string> names)
    {
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        ImmutableArray<string>.Builder labels = ImmutableArray.CreateBuilder<string>(names.Length);
        foreach (string name in names)
        {
            int count = seen.GetValueOrDefault(name) + 1;
            seen[name] = count;
            labels.Add(count == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}#{count}"));
        }

        return labels.ToImmutable();
    }
}
