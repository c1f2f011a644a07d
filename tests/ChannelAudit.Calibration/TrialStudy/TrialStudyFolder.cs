using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>Writes the invented study "harbour pictures" to try the program on, and what is true of it beside the folder, where no audit looks.</summary>
internal static class TrialStudyFolder
{
    /// <summary>Makes everything; files of the same names are replaced.</summary>
    /// <param name="folder">Where to; the truth goes to <c>FOLDER-truth.tsv</c>.</param>
    /// <exception cref="IOException">When a file cannot be written.</exception>
    internal static void Write(string folder)
    {
        string root = Directory.CreateDirectory(folder).FullName.TrimEnd(Path.DirectorySeparatorChar);
        ImmutableArray<HarbourSession> sessions = HarbourSession.All;
        string[] truths = new string[sessions.Length];

        // Sessions share nothing, so their bytes do not depend on how many are made at once.
        ParallelOptions asManyAsCores = new() { MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, sessions.Length, asManyAsCores, i => truths[i] = Write(sessions[i], root));
        File.WriteAllText(Path.Combine(root, "setup.toml"), HarbourSetup.Text());
        File.WriteAllText(root + "-truth.tsv", "recording\tgroup\tsites\ttrials\tplanted\n" + string.Concat(truths));
    }

    /// <summary>Writes a session and gives its lines of the truth.</summary>
    private static string Write(HarbourSession session, string root)
    {
        Plant[] plants =
        [
            .. FilePlants.All.Concat(SignalPlants.All).Where(plant => string.Equals(plant.Recording, session.Name, StringComparison.Ordinal)),
        ];
        SessionPlan plan = session.Plan;
        StringBuilder truth = new();
        foreach (Plant plant in plants)
        {
            plan = plant.Plan(plan);
            plan = plan with { Faults = [.. plan.Faults, .. plant.Faults(plan.Trials)] };
        }

        MadeRecording made = MadeRecording.Make(plan);
        string path = Path.Combine(root, session.Name + ".edf");
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        StudyFile.Write(made, plants.Select(plant => plant.Stored).FirstOrDefault(stored => stored != new StoredChange()) ?? new StoredChange(), path);
        foreach (Plant plant in plants)
        {
            truth.Append($"{session.Name}\t{session.Group}\t{plant.Sites}\t{TrialsOf(plant, made)}\t{plant.What}\n");
        }

        return truth.ToString();
    }

    private static string TrialsOf(Plant plant, MadeRecording made)
    {
        int[] numbers = [.. plant.Faults(made.Plan.Trials).SelectMany(fault => fault.TruthsIn(made)).SelectMany(one => one.Trials).Distinct().Order()];
        return numbers.Length == 0 || numbers.Length == made.Plan.Trials.Length ? plant.Trials : string.Join(',', numbers);
    }
}
