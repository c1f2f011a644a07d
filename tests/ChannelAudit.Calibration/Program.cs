using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Calibration;
using ChannelAudit.Calibration.Archive;
using ChannelAudit.Calibration.Report;
using ChannelAudit.Calibration.Running;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Calibration.TrialStudy;
using ChannelAudit.Criteria;

Option<string> only = new("--only") { Description = "names of faults, separated by commas: print their counts on choosing seeds and write nothing" };
Option<bool> bySecond = new("--second") { Description = "with --only: recordings of the second generator" };
Option<int> recordings = new("--recordings") { Description = "recordings a point", DefaultValueFactory = _ => 16 };
Option<string> python = new("--python") { Description = "Python with NumPy for the second generator", DefaultValueFactory = _ => "python3" };
Option<string> documents = new("--docs") { Description = "folder of the documents", DefaultValueFactory = _ => "docs" };
Option<string> trialStudy = new("--trial-study")
{
    Description = "folder: write an invented study of 40 participants to try the program on, the truth beside it, and nothing else",
};
Option<string> archive = new("--archive")
{
    Description = "folder: write an invented archive of three years in two labs (as many recordings as --recordings says), and nothing else",
};
Option<ulong> seed = new("--seed") { Description = "with --archive: decides everything that is drawn", DefaultValueFactory = _ => 1 };
RootCommand root = new("Calibrates the default limits on made recordings; writes docs/calibration.md and docs/calibration. Run it from the root of the repository.")
{
    only, bySecond, recordings, python, documents, trialStudy, archive, seed,
};
root.SetAction(parsed =>
{
    if (parsed.GetValue(trialStudy) is { } folder)
    {
        TrialStudyFolder.Write(folder);
        return;
    }

    if (parsed.GetValue(archive) is { } place)
    {
        ArchiveFolder.Write(place, parsed.GetValue(recordings), parsed.GetValue(seed));
        return;
    }

    Progress progress = new();
    SecondGenerator second = new(parsed.GetValue(python)!, "fixtures/calibration/second_generator.py");
    ImmutableArray<Sweep> sweeps = [.. FaultSweeps.All, .. Confusers.All];
    if (parsed.GetValue(only) is { } names)
    {
        Sweep[] chosen = [.. sweeps.Where(sweep => names.Split(',').Contains(sweep.Name, StringComparer.Ordinal))];
        ImmutableArray<StudyPoint> points = parsed.GetValue(bySecond) ? StudyRunner.SecondPointsOf(chosen) : StudyRunner.PointsOf(chosen);
        ImmutableArray<PointCount> counts = parsed.GetValue(bySecond)
            ? second.Run(points, SeedSet.Choosing, parsed.GetValue(recordings), progress.Step)
            : [.. StudyRunner.Run(points, SeedSet.Choosing, parsed.GetValue(recordings), [DefaultCriteria.All], progress.Step).Select(one => one[0])];
        string generator = parsed.GetValue(bySecond) ? MeasuredPoint.Second : MeasuredPoint.First;
        Console.Out.Write(CurvesTable.Of(points.Select((point, i) => new MeasuredPoint(generator, point, counts[i]))));
        return;
    }

    CalibrationFolder.Write(parsed.GetValue(documents)!, WholeStudy.Run(sweeps, parsed.GetValue(recordings), second, progress.Step));
});
return await root.Parse(args).InvokeAsync();
