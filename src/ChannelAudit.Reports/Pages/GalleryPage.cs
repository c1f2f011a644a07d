using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Figures.Gallery;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Synthesis.Gallery;

namespace ChannelAudit.Reports.Pages;

/// <summary>The gallery's README: a part a subject, with its plate and everything the audit said of what is on it.</summary>
public static class GalleryPage
{
    /// <summary>The page's first line: whoever finds it in a folder knows that a gallery is there.</summary>
    public const string Title = "# What each fault looks like beside what resembles it";

    /// <summary>The file of a subject's plate.</summary>
    public static string PlateOf(GallerySubject subject) => subject.Code + ".png";

    /// <summary>The page in Markdown, lines ended by LF.</summary>
    /// <param name="subjects">The subjects, each with its exhibits in order.</param>
    public static string Of(ImmutableArray<(GallerySubject Subject, ImmutableArray<GalleryExhibit> Exhibits)> subjects)
    {
        StringBuilder page = new(
            $"""
            {Title}

            Made by `channelaudit explain --gallery DIR`: the program makes half a minute of recording for each picture, audits it with its default limits
            as any recording, and writes down what it said. No person was recorded. On every plate the fault stands on the left under a filled bar, what
            resembles it on the right under an open one; panels beside each other have one scale. Square, triangle and disc are the verdicts reject,
            questionable and pass of the trial that is shown; a disc with a broken line is a pass with something not assessed.

            `channelaudit explain CODE` prints the whole page of a reason.


            """);
        foreach ((GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits) in subjects)
        {
            AppendSubject(page, subject, exhibits);
        }

        return page.ToString().TrimEnd() + "\n";
    }

    private static void AppendSubject(StringBuilder page, GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits)
    {
        page.Append($"## {subject.Code}\n\n{subject.Title}. {subject.Telling}\n\n");
        page.Append($"![{Alternative(exhibits)}]({PlateOf(subject)})\n\n");
        page.Append("| made | which is | the audit says of the trial | of the channel | measured |\n|---|---|---|---|---|\n");
        foreach (GalleryExhibit exhibit in exhibits)
        {
            string[] cells =
            [
                exhibit.Specimen.Name,
                PlateWords.Role(subject, exhibit.Specimen),
                PlateWords.Verdict(exhibit),
                PlateWords.Channel(exhibit),
                PlateWords.Measures(exhibit, subject.Code),
            ];
            page.Append("| ").AppendJoin(" | ", cells).Append(" |\n");
        }

        page.Append("\nBy eye:\n\n");
        foreach (GalleryExhibit exhibit in exhibits)
        {
            page.Append($"- **{exhibit.Specimen.Name}.** {exhibit.Specimen.ByEye}\n");
        }

        foreach (string information in exhibits.Select(exhibit => (exhibit.Specimen.Name, Words: PlateWords.Information(exhibit)))
            .Where(one => one.Words.Length > 0).Select(one => $"{one.Name}: {one.Words}"))
        {
            page.Append($"\nInformation that changes no verdict. {information}\n");
        }

        page.Append('\n');
    }

    private static string Alternative(ImmutableArray<GalleryExhibit> exhibits) => "Left to right: " + string.Join(
        "; ", exhibits.Select(exhibit => $"{exhibit.Specimen.Name}, {VerdictLooks.Word(PlateWords.Look(exhibit))}"));
}
