using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Recordings;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Random;
using ChannelAudit.Synthesis;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Detectability;

/// <summary>Plants known faults of rising size in copies of a recording, audits them, and counts what is found.</summary>
/// <remarks>
/// A copy is the recording read through <see cref="PlantedSamples"/>. Places are drawn by seed, the same for every size, so that a curve compares like with like; at most a quarter of the
/// trials of a copy have a fault, so that the channel stays what it was.
/// </remarks>
public static class DetectabilityStudy
{
    private const ulong Seed = 20260301;
    private const int PartOfTrials = 4;

    /// <summary>The names of all faults.</summary>
    public static ImmutableArray<string> Names { get; } = [.. PlantKinds.All.Select(kind => kind.Name)];

    /// <summary>The reasons that they should be found for.</summary>
    public static ImmutableArray<string> Reasons { get; } = [.. PlantKinds.All.Select(kind => kind.Reason).Distinct(StringComparer.Ordinal)];

    /// <summary>Runs the study on a file.</summary>
    /// <param name="entry">The file and its id; it is only read.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="criteria">The limits in force.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <param name="options">How much is planted.</param>
    /// <param name="progress">Told how many audits are done, and of how many.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read, or setup or events do not fit it.</exception>
    public static DetectabilityResult Of(
        RecordingEntry entry,
        StudySetup setup,
        AuditCriteria criteria,
        string? eventsFile,
        DetectabilityOptions options,
        IProgress<(int Done, int All)> progress,
        CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(options);
        using PreparedRecording prepared = PreparedRecording.Open(entry, setup, eventsFile);
        return Of(prepared.Recording, prepared.Input(criteria, withViews: false), options, progress, cancellation);
    }

    /// <summary>The key of the trials that a study of a file would be about (<see cref="TrialsKey"/>).</summary>
    /// <param name="entry">The file and its id; no sample is read.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read, or setup or events do not fit it.</exception>
    public static string TrialsOf(RecordingEntry entry, StudySetup setup, string? eventsFile)
    {
        using PreparedRecording prepared = PreparedRecording.Open(entry, setup, eventsFile);
        return TrialsKey.Of(prepared.Trials.Trials);
    }

    /// <summary>Runs the study on an opened recording.</summary>
    internal static DetectabilityResult Of(
        Recording recording, AuditInput input, DetectabilityOptions options, IProgress<(int Done, int All)> progress, CancellationToken cancellation)
    {
        decimal end = Math.Min((decimal)recording.DurationS, options.Minutes * 60);
        using SharedSamples shared = new(recording.Samples);
        using Recording used = RecordingCut.Before(recording, end, shared);
        PlantHost host = new(used, input with { WithViews = false, WithSensitivity = false, Trials = [.. input.Trials.Where(trial => trial.WindowToS <= end)] }, cancellation);
        ImmutableArray<PlantKind> kinds = [.. PlantKinds.All.Where(kind => IsAsked(kind, options.Faults))];
        ImmutableArray<ImmutableArray<ImmutableArray<PlantPlace>>> rounds = [.. kinds.Select(kind => WhyNot(host, kind) is null ? Rounds(host, kind, options.Repeats * kind.RoundsEach) : [])];
        PlantJob[] jobs =
        [
            .. kinds.SelectMany((kind, i) => kind.Sizes.SelectMany((_, size) => rounds[i].Select((places, round) => new PlantJob(i, size, round, places)))),
        ];
        DetectedPoint[] counted = Run(host, kinds, jobs, options.Jobs, progress, cancellation);
        return new DetectabilityResult
        {
            Id = input.Id,
            Sha256 = input.Sha256,
            CriteriaSha256 = input.Criteria.Sha256,
            SetupSha256 = input.Setup.Sha256,
            TrialsSha256 = TrialsKey.Of(input.Trials),
            UsedS = (double)end,
            DurationS = recording.DurationS,
            Repeats = options.Repeats,
            Faults =
            [
                .. kinds.Select((kind, i) => new DetectedFault(
                    kind.Name, kind.Reason, kind.Title, kind.Unit, rounds[i].IsEmpty ? [] : [.. kind.Sizes.Select((size, s) => Sum(size, jobs, counted, i, s))], WhyNot(host, kind))),
                .. PlantKinds.NotPlanted.Where(open => options.Faults.IsEmpty || options.Faults.Contains(open.Reason, StringComparer.Ordinal))
                    .Select(open => new DetectedFault(open.Reason, open.Reason, "not planted", string.Empty, [], open.Cause)),
            ],
        };
    }

    private static bool IsAsked(PlantKind kind, ImmutableArray<string> faults) =>
        faults.IsEmpty || faults.Contains(kind.Name, StringComparer.Ordinal) || faults.Contains(kind.Reason, StringComparer.Ordinal);

    private static string? WhyNot(PlantHost host, PlantKind kind) =>
        kind.NeedsMicrovolts && host.Audited.All(channel => !channel.IsMicrovolts) ? "the samples have no unit"
        : kind.WhyNot?.Invoke(host) is { } why ? why
        : kind.Places(host).Any() ? null
        : host.WhyNoneIsClean(kind.Reason);

    /// <summary>The places of each round, drawn by seed; every place is used once.</summary>
    private static ImmutableArray<ImmutableArray<PlantPlace>> Rounds(PlantHost host, PlantKind kind, int repeats)
    {
        List<PlantPlace> left = [.. kind.Places(host).Where(place => !kind.NeedsMicrovolts || host.Audited[place.Channel].IsMicrovolts)];
        if (kind.IsPlantedOnce)
        {
            return [[.. left]];
        }

        Shuffle(left, NoiseStream.Of(Seed, "places:" + kind.Name));
        ImmutableArray<ImmutableArray<PlantPlace>>.Builder rounds = ImmutableArray.CreateBuilder<ImmutableArray<PlantPlace>>();
        int most = Math.Max(1, host.Trials.Length / PartOfTrials);
        for (int round = 0; round < repeats && left.Count > 0; round++)
        {
            List<PlantPlace> chosen = [];
            foreach (PlantPlace place in left)
            {
                if (chosen.Sum(one => one.Trials.Count) < most && !chosen.Exists(place.Meets))
                {
                    chosen.Add(place);
                }
            }

            left.RemoveAll(chosen.Contains);
            rounds.Add([.. chosen]);
        }

        return rounds.DrainToImmutable();
    }

    // Fisher and Yates, as in Knuth, The Art of Computer Programming, vol. 2, algorithm P.
    private static void Shuffle(List<PlantPlace> places, Pcg32 random)
    {
        for (int i = places.Count - 1; i > 0; i--)
        {
            int other = (int)(random.NextDouble() * (i + 1));
            (places[i], places[other]) = (places[other], places[i]);
        }
    }

    private static DetectedPoint[] Run(
        PlantHost host, ImmutableArray<PlantKind> kinds, PlantJob[] jobs, int threads, IProgress<(int Done, int All)> progress, CancellationToken cancellation)
    {
        DetectedPoint[] counted = new DetectedPoint[jobs.Length];
        int done = 0;
        progress.Report((0, jobs.Length));
        Parallel.For(0, jobs.Length, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation }, i =>
        {
            counted[i] = Count(host, kinds[jobs[i].Kind], jobs[i], cancellation);
            progress.Report((Interlocked.Increment(ref done), jobs.Length));
        });
        return counted;
    }

    private static DetectedPoint Count(PlantHost host, PlantKind kind, PlantJob job, CancellationToken cancellation)
    {
        double size = kind.Sizes[job.Size];
        PlantEdit[] edits = [.. job.Places.SelectMany((place, i) => kind.Edits(host, place, size, SeedOf(kind, job.Round, i)))];
        using Recording planted = PlantedSamples.In(host.Recording, edits);
        GradeTable grades = GradeTable.Of(AuditReadings.Of(planted, host.Input, cancellation), host.Input.Criteria);
        DetectedPoint counted = new(size, 0, 0, 0);
        foreach (PlantPlace place in job.Places)
        {
            if (place.Other is { } other)
            {
                Grade[] of = [.. place.Trials.Select(trial => Worse(grades.TrialGrade(place.Channel, trial, kind.Reason), grades.TrialGrade(other, trial, kind.Reason))).Order()];

                // A joint of minutes is one place: the verdict that at least half of its trials have.
                counted = Counted(counted, of[(of.Length - 1) / 2]);
                continue;
            }

            foreach (int trial in kind.Having?.Invoke(host, place, size) ?? place.Trials)
            {
                counted = Counted(counted, grades.TrialGrade(place.Channel, trial, kind.Reason));
            }
        }

        return counted;
    }

    private static Grade Worse(Grade one, Grade other) => one > other ? one : other;

    private static DetectedPoint Counted(DetectedPoint point, Grade grade) => point with
    {
        Places = point.Places + 1,
        Found = point.Found + (grade >= Grade.Questionable ? 1 : 0),
        Rejected = point.Rejected + (grade == Grade.Reject ? 1 : 0),
    };

    private static DetectedPoint Sum(double size, PlantJob[] jobs, DetectedPoint[] counted, int kind, int place) => jobs
        .Zip(counted)
        .Where(pair => pair.First.Kind == kind && pair.First.Size == place)
        .Aggregate(new DetectedPoint(size, 0, 0, 0), (sum, pair) => sum with
        {
            Places = sum.Places + pair.Second.Places,
            Found = sum.Found + pair.Second.Found,
            Rejected = sum.Rejected + pair.Second.Rejected,
        });

    // The same noise at every size.
    private static ulong SeedOf(PlantKind kind, int round, int place) =>
        NoiseStream.Of(Seed, FormattableString.Invariant($"plant:{kind.Name}:{round}:{place}")).Next();
}
