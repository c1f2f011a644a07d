using System.Collections.Immutable;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Cli.Verifying;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using Serilog;

namespace ChannelAudit.Cli.Merging;

/// <summary>Runs <c>merge</c>: puts the shares of a run together, to the bytes that one machine would have written.</summary>
/// <param name="log">For what is going on.</param>
/// <param name="error">For recordings that could not be read.</param>
/// <param name="style">What the terminal can show.</param>
internal sealed class MergeRunner(ILogger log, TextWriter error, TerminalStyle style)
{
    /// <summary>Runs it.</summary>
    /// <param name="folders">The shares, in any order.</param>
    /// <param name="outFolder">Where the audit goes.</param>
    /// <param name="withParquet">Whether tables are written as Parquet files too.</param>
    /// <param name="output">For the table that a person reads first.</param>
    /// <param name="cancel">Ends it; what stood in the folder is as it was.</param>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When they are not all shares of one run, one is damaged, or the folder cannot be written.</exception>
    public int Run(IReadOnlyList<string> folders, string outFolder, bool withParquet, TextWriter output, CancellationToken cancel)
    {
        ShareSet shares = ShareSet.Open(folders);
        if (!string.Equals(shares.Version, ProductVersion.Text, StringComparison.Ordinal))
        {
            throw UsageErrors.SharesOfAnotherVersion(shares.Version);
        }

        FigureChoice figures = shares.Figures switch { "none" => FigureChoice.None, "summary" => FigureChoice.Summary, _ => FigureChoice.All };
        using ScratchFolder scratch = ScratchFolder.Outside();
        AuditRun run = ScreenRunner.RunOf(InputsOf(shares, scratch), shares.All);
        using AuditOutput place = new(run, outFolder, figures, shares.IsAlone, style, withParquet: withParquet);
        ImmutableArray<string> dropped = place.NotAmong(shares.All.Select(entry => entry.Id));
        ImmutableArray<UnreadRecording> unread = AddAll(shares, place, cancel);
        if (unread.Length == shares.All.Length)
        {
            return ExitCode.Unread;
        }

        place.Print(place.Finish(unread, cancel), isUnchanged: false, output);
        LeftOut.Say(log, outFolder, dropped, place.OutdatedStudies);
        return unread.IsEmpty ? ExitCode.Done : ExitCode.Unread;
    }

    private static ScreenInputs InputsOf(ShareSet shares, ScratchFolder scratch)
    {
        Dictionary<string, string> places = shares.Inputs.ToDictionary(input => input.Role, scratch.Put, StringComparer.Ordinal);
        ScreenRequest request = new()
        {
            Paths = [],
            OutFolder = string.Empty,
            SetupFile = places.GetValueOrDefault(RunInput.Setup),
            CriteriaFile = places.GetValueOrDefault(RunInput.Criteria),
            EventsFile = places.GetValueOrDefault(RunInput.Events),
            ImpedanceFile = places.GetValueOrDefault(RunInput.Readings),
        };
        return ScreenRunner.ReadInputs(request, withViews: false);
    }

    private ImmutableArray<UnreadRecording> AddAll(ShareSet shares, AuditOutput place, CancellationToken cancel)
    {
        ImmutableArray<UnreadRecording>.Builder unread = ImmutableArray.CreateBuilder<UnreadRecording>();
        foreach (RecordingEntry entry in shares.All)
        {
            cancel.ThrowIfCancellationRequested();
            if (shares.Done(entry) is { } done)
            {
                place.Add(Take(done, place), done.Stamp);
            }
            else
            {
                unread.Add(shares.Unread(entry));
                ErrorReport.Write(error, ScreenRunner.WithPath(new ChannelAuditException(FaultKind.Recording, unread[^1].Message, unread[^1].Hint), entry));
            }
        }

        return unread.ToImmutable();
    }

    private static RecordingResult Take(SharedRecording recording, AuditOutput place) =>
        place.TakeOver(recording.Id, recording.Stamp)
        ?? (place.Import(recording) ? place.TakeOver(recording.Id, recording.Stamp) : null)
        ?? throw ShareSet.Damaged(recording);
}
