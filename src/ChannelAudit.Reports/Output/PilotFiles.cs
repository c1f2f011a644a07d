using System.Globalization;
using System.Text;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Output;

/// <summary>What a pilot leaves beside the files of an audit.</summary>
public static class PilotFiles
{
    /// <summary>The picture.</summary>
    public const string Picture = "pilot.png";

    /// <summary>The list of what to do.</summary>
    public const string DoNext = "do-next.txt";

    /// <summary>Whether what stands in a folder is a pilot, not an audit of <c>screen</c> that came after one: that one takes the list away.</summary>
    /// <param name="folder">The output folder.</param>
    public static bool AreIn(string folder) => File.Exists(Path.Combine(folder, DoNext));

    /// <summary>Where the picture of an attempt is kept: <c>attempts/01.png</c>.</summary>
    public static string PictureOf(PilotAttempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        return string.Create(CultureInfo.InvariantCulture, $"attempts/{attempt.Number:00}.png");
    }

    /// <summary>The list of what to do, with the cautions in full, as UTF-8 text.</summary>
    /// <param name="report">The pilot.</param>
    /// <param name="attempts">This attempt and those before it.</param>
    public static byte[] DoNextText(PilotReport report, AttemptSeries attempts)
    {
        StringBuilder text = new();
        text.Append(Plain(report.Recording.Id)).Append(": ").Append(AnswerWords.Headline(report)).Append('\n');
        AddList(text, "Times", MarkWords.Of(report) is { Length: > 0 } marks ? [marks] : []);
        AddList(text, "Changed since the attempt before", [.. attempts.Changes]);
        AddList(text, "Started all the same, because", attempts.Now.StartedBecause is { } because ? [because] : []);
        AddList(text, "Do next", [.. report.Next.Select((step, i) => $"{(i + 1).Plain()}. {StepWords.Of(step)} ({SiteMoments.Because(report, step)})")]);
        if (StepWords.NeedCaution(report.Next))
        {
            text.Append('\n').Append(ReasonWords.Caution).Append('\n');
        }

        AddList(text, "Not checked", [.. report.NotChecked]);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void AddList(StringBuilder text, string title, string[] lines)
    {
        if (lines.Length == 0)
        {
            return;
        }

        text.Append('\n').Append(title).Append('\n');
        foreach (string line in lines)
        {
            text.Append("  ").Append(Plain(line)).Append('\n');
        }
    }

    // Names come from files: no line of theirs may pass for one of ours.
    private static string Plain(string text) => Console.TerminalText.Clean(text);
}
