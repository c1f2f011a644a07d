using System.Collections.Immutable;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Cli.Screening;

/// <summary>The engine of the product: audits with the core, writes and prints with the reports.</summary>
internal sealed class AuditEngine : IScreenEngine
{
    private readonly TerminalStyle _style;

    /// <summary>Makes the engine.</summary>
    /// <param name="style">What the terminal can show.</param>
    public AuditEngine(TerminalStyle style) => _style = style;

    /// <inheritdoc/>
    public RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, CancellationToken cancel) =>
        RecordingAudit.Of(recording, inputs.Setup, inputs.Criteria, inputs.EventsFile, cancel, inputs.WithViews, inputs.Impedance);

    /// <inheritdoc/>
    public void Write(AuditRun run, string folder, FigureChoice figures, CancellationToken cancel) =>
        AuditWriter.Write(run, folder, figures == FigureChoice.None ? null : Draw, cancel);

    /// <inheritdoc/>
    public void Print(AuditRun run, string folder, TextWriter output) => output.Write(VerdictTable.Render(run, folder, _style));

    private static ImmutableArray<FigureFile> Draw(RecordingResult recording, CancellationToken cancel)
    {
        List<FigureFile> figures = [new FigureFile(FigureFile.SessionRibbon, SessionRibbon.Render(recording, FigureSize.Full))];
        foreach (ChannelResult channel in recording.Channels.Where(channel => channel.View is not null))
        {
            cancel.ThrowIfCancellationRequested();
            figures.Add(new FigureFile(FigureFile.SheetOf(recording, channel), ChannelSheet.Render(recording, channel, FigureSize.Full)));
        }

        foreach (PairResult pair in recording.Pairs.Where(pair => pair.View is not null))
        {
            cancel.ThrowIfCancellationRequested();
            figures.Add(new FigureFile(FigureFile.SheetOf(recording, pair), PairSheet.Render(recording, pair, FigureSize.Full)));
        }

        return [.. figures];
    }
}
