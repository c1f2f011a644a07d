using ChannelAudit.Pilot;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Output;

/// <summary>Writes a pilot: the files of an audit, the picture, what to do next, and the attempts so far.</summary>
public static class PilotWriter
{
    /// <summary>Writes all of it; the attempts of earlier pilots in the folder are kept.</summary>
    /// <param name="run">The audit of the one recording.</param>
    /// <param name="report">The pilot.</param>
    /// <param name="attempts">Earlier attempts and this one.</param>
    /// <param name="picture">The picture as PNG; null for none.</param>
    /// <param name="folder">The output folder.</param>
    /// <param name="cancel">Ends the writing; nothing has changed then.</param>
    /// <exception cref="ChannelAuditException">When the folder is not ours, or the operating system refuses.</exception>
    public static void Write(AuditRun run, PilotReport report, AttemptSeries attempts, ReadOnlyMemory<byte>? picture, string folder, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(attempts);
        List<ExtraFile> more = [new ExtraFile(PilotFiles.DoNext, PilotFiles.DoNextText(report, attempts))];
        if (picture is { } png)
        {
            more.Add(new ExtraFile(PilotFiles.Picture, png));
            more.Add(new ExtraFile(PilotFiles.PictureOf(attempts.Now), png, OutlivesAudits: true));
        }

        more.Add(new ExtraFile(AttemptsJson.FileName, AttemptsJson.Render(attempts.All), OutlivesAudits: true));
        AuditWriter.Write(run, [report.Recording], folder, null, cancel, more, new PilotSection(report, attempts, picture));
    }
}
