using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Criteria;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.Running;

/// <summary>Recordings by the generator in NumPy, which shares no code with this program and was written without a look at it.</summary>
/// <param name="python">The Python to run it with.</param>
/// <param name="script">Its file.</param>
internal sealed class SecondGenerator(string python, string script)
{
    private const int Batch = 40;

    private static readonly SessionPlan Sites = new Protocol().Plan(1);

    /// <summary>Counts for each point.</summary>
    /// <exception cref="InvalidOperationException">When the generator fails.</exception>
    public ImmutableArray<PointCount> Run(ImmutableArray<StudyPoint> points, SeedSet set, int recordings, Action progress)
    {
        PointCount[] counts = new PointCount[points.Length * recordings];
        int batches = (counts.Length + Batch - 1) / Batch;

        // Each waits for a process of its own: without a bound the pool would start ever more of them.
        Parallel.For(0, batches, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, batch =>
        {
            int from = batch * Batch;
            int to = Math.Min(counts.Length, from + Batch);
            DirectoryInfo folder = Directory.CreateTempSubdirectory("calibration-");
            try
            {
                Make(folder.FullName, [.. Enumerable.Range(from, to - from).Select(i => ItemOf(i, points[i / recordings], set, i % recordings))]);
                for (int i = from; i < to; i++)
                {
                    counts[i] = Count(folder.FullName, Id(i), points[i / recordings]);
                    progress();
                }
            }
            finally
            {
                folder.Delete(recursive: true);
            }
        });
        return [.. Enumerable.Range(0, points.Length).Select(point => counts.AsSpan(point * recordings, recordings).ToArray().Aggregate(PointCount.Empty, PointCount.Add))];
    }

    private static JsonNode ItemOf(int index, StudyPoint point, SeedSet set, int recording)
    {
        Subject subject = Subject.Draw(point.SeedOf(set, recording));
        bool isDc = subject.Amplifier.HighpassHz <= 0 || point.Sweep.Name is "drift" or "low-frequency" or "settling" or "blinks";
        return new JsonObject
        {
            ["id"] = Id(index),
            ["seed"] = subject.Seed,
            ["fault"] = string.Equals(point.Sweep.Name, "clean", StringComparison.Ordinal) ? "none" : point.Sweep.SecondName,
            ["severity"] = point.Severity,
            ["rate"] = subject.RateHz,
            ["mains"] = (int)Math.Round(subject.MainsHz),
            ["coupling"] = isDc ? "dc" : "10hz",
            ["rest_uv"] = subject.RestUv,
            ["site"] = "cheek",
        };
    }

    private static string Id(int index) => index.ToString("D5", CultureInfo.InvariantCulture);

    private void Make(string folder, JsonArray items)
    {
        string plan = Path.Combine(folder, "plan.json");
        File.WriteAllText(plan, items.ToJsonString());
        using Process process = Process.Start(new ProcessStartInfo(python, [script, "--plan", plan, "--out", folder]) { RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false })
            ?? throw new InvalidOperationException($"{python} did not start");
        Task<string> written = process.StandardOutput.ReadToEndAsync();
        string errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        _ = written.Result;
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{script} failed: {errors}");
        }
    }

    private static PointCount Count(string folder, string id, StudyPoint point)
    {
        Sweep sweep = point.Sweep;
        using JsonDocument truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, id + ".truth.json")));
        using Recording recording = RecordingOpener.Open(Path.Combine(folder, id + ".edf"), new ReadOptions(null, null));
        HashSet<FaultyCell> faulty = sweep.IsConfuser
            ? []
            : [.. truth.RootElement.GetProperty("sites").EnumerateArray().SelectMany(site =>
                truth.RootElement.GetProperty("trials").EnumerateArray().Select(trial => new FaultyCell(site.GetString()!, trial.GetInt32())))];
        HashSet<FaultyCell> uncounted = sweep.Gross.Contains(point.Position) ? [.. Milder(truth.RootElement, sweep.Severities[sweep.Gross[0]])] : [];
        return PlanAudit.CountOf(PlanAudit.Audited(recording, SetupOf(truth.RootElement), DefaultCriteria.All), sweep.Reasons, faulty, uncounted);
    }

    // What is clipped in a whole recording differs from trial to trial: among gross ones stands only a trial that is gross itself, by the truth of the generator.
    private static IEnumerable<FaultyCell> Milder(JsonElement truth, double leastGross) => truth.TryGetProperty("clipped_percent", out JsonElement sites)
        ? sites.EnumerateObject().SelectMany(site => site.Value.EnumerateObject()
            .Where(trial => trial.Value.GetDouble() is > 0 and var percent && percent < leastGross)
            .Select(trial => new FaultyCell(site.Name, int.Parse(trial.Name, CultureInfo.InvariantCulture))))
        : [];

    // A lab knows its amplifier: the setup states the noise of the noisiest input, as the first generator's does.
    private static StudySetup SetupOf(JsonElement truth)
    {
        double share = truth.GetProperty("electrode_share").GetDouble();
        double noise = truth.GetProperty("noise_uv").EnumerateArray().Max(site => site.GetDouble()) * Math.Sqrt(1 - share);
        return SetupFile.Parse(SetupText.Of(Sites with { Amplifier = new AmplifierPlan { NoiseUv = noise } }), "setup.toml");
    }
}
