using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Synthesis.Gallery;

namespace ChannelAudit.Cli.Gallery;

/// <summary>Makes the gallery, audits it, draws it, and writes it whole or not at all.</summary>
internal static class GalleryWriter
{
    private const string Readme = "README.md";

    /// <summary>Writes a README and a plate for each subject; those of an earlier gallery are replaced.</summary>
    /// <param name="folder">A new or empty folder, or that of an earlier gallery.</param>
    /// <param name="cancel">Ends the work.</param>
    /// <returns>How many plates.</returns>
    /// <exception cref="ChannelAuditException">When the folder holds something else, or cannot be written.</exception>
    public static int Write(string folder, CancellationToken cancel)
    {
        Check(folder);
        ImmutableArray<GallerySubject> subjects = GallerySubjects.All;
        var exhibits = new ImmutableArray<GalleryExhibit>[subjects.Length];
        byte[][] plates = new byte[subjects.Length][];

        // Subjects share nothing, so their bytes do not depend on how many are made at once.
        Parallel.For(0, subjects.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            exhibits[i] = GalleryAudit.Of(subjects[i], cancel);
            plates[i] = GalleryPlate.Render(subjects[i], exhibits[i], FigureSize.Full);
        });
        using OutputBatch batch = new(folder);
        for (int i = 0; i < subjects.Length; i++)
        {
            batch.Add(GalleryPage.PlateOf(subjects[i]), plates[i]);
        }

        batch.Add(Readme, Encoding.UTF8.GetBytes(GalleryPage.Of([.. subjects.Select((subject, i) => (subject, exhibits[i]))])));
        batch.Commit();
        return subjects.Length;
    }

    private static void Check(string folder)
    {
        if (File.Exists(folder) || (Directory.Exists(folder) && !IsGallery(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            throw UsageErrors.NotForGallery(folder);
        }
    }

    private static bool IsGallery(string folder)
    {
        string readme = Path.Combine(folder, Readme);
        return File.Exists(readme) && string.Equals(File.ReadLines(readme).FirstOrDefault(), GalleryPage.Title, StringComparison.Ordinal);
    }
}
