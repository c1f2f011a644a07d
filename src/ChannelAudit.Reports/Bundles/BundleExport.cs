using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Excerpts;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Bundles;

/// <summary>Gathers what a reviewer needs to check exclusions without the recordings.</summary>
/// <param name="run">The audit.</param>
/// <param name="writer">The bundle.</param>
/// <param name="least">The mildest verdict whose samples go into it.</param>
public sealed class BundleExport(RecordedRun run, BundleWriter writer, Grade least)
{
    /// <summary>How files of samples end.</summary>
    public const string SamplesEnding = ".f64";

    private readonly List<BundleRecording> _recordings = [];
    private readonly List<Exclusion> _exclusions = [];
    private readonly List<BundleBlock> _blocks = [];
    private readonly List<BundleOmission> _omitted = [];

    /// <summary>Channels and trials that are left out, or would be.</summary>
    public int Exclusions => _exclusions.Count - Questionable;

    /// <summary>Channels and trials that are in it for being questionable: nobody leaves them out.</summary>
    public int Questionable => _exclusions.Count(one => one is { Computed: < Grade.Reject, Final: < Grade.Reject });

    /// <summary>The most bytes of samples of one channel around one trial: a window of hours is no longer a part of a recording.</summary>
    public long LargestBlock { get; init; } = BundleLimits.LargestEntry;

    /// <summary>Trials of channels whose samples could not be taken.</summary>
    public int Omitted => _omitted.Count;

    /// <summary>Adds the tables, results and decisions of the audit, and the files it was made with.</summary>
    /// <exception cref="ChannelAuditException">When a file is not as it was written, or the operating system refuses.</exception>
    public void AddAudit()
    {
        Dictionary<string, string> listed = run.Files.ToDictionary(file => file.Path, file => file.Sha256, StringComparer.Ordinal);
        IEnumerable<string> files = run.Files.Select(file => file.Path).Append(PreviousAudit.FileName).Append(Ledger.FileName);
        foreach (string path in files.Where(IsTaken).Order(StringComparer.Ordinal).Where(path => File.Exists(Path.Combine(run.Audit.Folder, path))))
        {
            BundleEntry added = writer.Add(BundleIndex.AuditFolder + path, Bytes(path));
            if (listed.TryGetValue(path, out string? sha256) && !string.Equals(added.Sha256, sha256, StringComparison.Ordinal))
            {
                throw BundleErrors.NotAsListed(run.Audit.Folder, path);
            }
        }

        foreach ((RunInput file, _) in run.Inputs ?? [])
        {
            string path = $"inputs/{file.Role}/{file.FileName}";
            if (SafePath.IsBelow(path))
            {
                writer.Add(path, file.Bytes.AsSpan());
            }
        }
    }

    /// <summary>Adds what is left out of a recording, with its samples.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="open">Opens it; called only when there are samples to take.</param>
    /// <param name="cancel">Ends it.</param>
    public void AddRecording(StoredRecording recording, Func<ExcerptSource> open, CancellationToken cancel)
    {
        RecordingResult result = run.Audit.ResultOf(recording);
        Exclusion[] exclusions = [.. Exclusion.Of(result, least)];
        _exclusions.AddRange(exclusions);
        (int Trial, string Channel)[] wanted =
        [
            .. exclusions.Where(exclusion => exclusion.Trial is not null)
                .SelectMany(exclusion => exclusion.ChannelsOf(ChannelOf(result, exclusion.Channel)).Select(channel => (exclusion.Trial!.Value, channel)))
                .Distinct()
                .OrderBy(one => one.channel, StringComparer.Ordinal)
                .ThenBy(one => one.Value),
        ];
        if (wanted.Length == 0)
        {
            return;
        }

        using ExcerptSource source = open();
        ImmutableArray<ChannelFacts> channels = source.Channels;
        _recordings.Add(new BundleRecording(recording.Id, [.. channels.Where(channel => BundleLimits.Takes(channel.Rate))]));
        foreach ((int number, string channel) in wanted)
        {
            cancel.ThrowIfCancellationRequested();
            int place = Enumerable.Range(0, channels.Length).First(i => string.Equals(channels[i].Name, channel, StringComparison.Ordinal));
            AddBlock(recording, channel, result.Trials.Single(trial => trial.Number == number), source, place);
        }
    }

    /// <summary>Adds the index and ends it.</summary>
    public void Complete() => writer.Complete(new BundleIndex
    {
        Version = run.Audit.Version,
        CriteriaSha256 = run.Audit.Criteria.Sha256,
        Least = least,
        Recordings = [.. _recordings],
        Exclusions = [.. _exclusions],
        Blocks = [.. _blocks],
        Omitted = [.. _omitted],
        Entries = writer.Entries,
    });

    // Pictures show what no table has, and pages are made of pictures: a bundle says nothing that is not needed.
    private static bool IsTaken(string path) => Path.GetExtension(path) is ".tsv" or ".json" or ".jsonl" or ".md";

    private static ChannelResult ChannelOf(RecordingResult result, string name) =>
        result.Channels.First(channel => string.Equals(channel.Name, name, StringComparison.Ordinal));

    private void AddBlock(StoredRecording recording, string channel, Trial trial, ExcerptSource source, int place)
    {
        BundleSpan span = BundleSpan.Of(trial);
        Rational rate = source.Channels[place].Rate;
        if (!BundleLimits.Takes(rate) || (double)(span.ToS - span.FromS) * rate.Value * sizeof(double) > LargestBlock)
        {
            _omitted.Add(new BundleOmission(recording.Id, channel, trial.Number));
            return;
        }

        // Positions tell names apart that differ by capitals only, wherever the file is unpacked.
        Excerpt excerpt = source.Take(place, span.FromS, span.ToS);
        int number = run.Audit.Recordings.IndexOf(recording) + 1;
        string path = FormattableString.Invariant($"samples/{number}-{recording.Id}/{place + 1}-{RecordingId.Escape(channel)}/{trial.Number}{SamplesEnding}");
        writer.Add(path, excerpt.Samples);
        _blocks.Add(new BundleBlock(path, recording.Id, channel, trial.Number, excerpt.Pieces));
    }

    private byte[] Bytes(string path)
    {
        try
        {
            return PlainFile.ReadAllBytes(Path.Combine(run.Audit.Folder, path));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotRead(path, fault);
        }
    }
}
