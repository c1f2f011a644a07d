using ChannelAudit.Calibration.Study;

namespace ChannelAudit.Calibration.Report;

/// <summary>Writes <c>calibration.md</c>, <c>calibration/*.png</c> and <c>calibration/curves.tsv</c>.</summary>
internal static class CalibrationFolder
{
    /// <summary>The table with all counts, below the folder of the documents.</summary>
    public const string Table = "calibration/curves.tsv";

    /// <summary>Writes everything.</summary>
    /// <param name="folder">The folder of the documents, with a <c>calibration.md</c> in it.</param>
    /// <param name="result">What was measured.</param>
    public static void Write(string folder, StudyResult result)
    {
        Directory.CreateDirectory(Path.Combine(folder, "calibration"));
        File.WriteAllText(Path.Combine(folder, Table), CurvesTable.Of(result.Judged));
        foreach (Sweep sweep in FaultSweeps.All)
        {
            File.WriteAllBytes(Path.Combine(folder, "calibration", sweep.Name + ".png"), CurveFigure.Of(sweep, result.Of(sweep)));
        }

        string file = Path.Combine(folder, "calibration.md");
        string page = File.ReadAllText(file);
        page = Blocks.Replace(page, "targets", TargetTable.Of(result));
        page = Blocks.Replace(page, "faults", FaultSection.All(result));
        page = Blocks.Replace(page, "confusers", ConfuserTable.Of(result));
        page = Blocks.Replace(page, "limits", LimitTable.Of(result));
        File.WriteAllText(file, page);
    }
}
