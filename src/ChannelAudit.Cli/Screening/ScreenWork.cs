using System.Collections.Concurrent;
using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using Serilog;

namespace ChannelAudit.Cli.Screening;

/// <summary>What is done with each recording, on any thread: its inputs are hashed, and unless an earlier run made a result from the same, it is audited and its files are written.</summary>
internal sealed class ScreenWork
{
    private readonly IScreenEngine _engine;
    private readonly IScreenOutput _place;
    private readonly ScreenInputs _inputs;
    private readonly string _figures;
    private readonly ILogger _log;
    private readonly ImmutableArray<(string Name, string? Hash)> _others;
    private readonly ConcurrentDictionary<string, (string Sha256, FileState State, RecordingStamp Stamp)> _known = new(StringComparer.Ordinal);

    /// <summary>Prepares it.</summary>
    public ScreenWork(IScreenEngine engine, IScreenOutput place, ScreenInputs inputs, FigureChoice figures, ILogger log, Progress progress)
    {
        (_engine, _place, _inputs, _log, Progress) = (engine, place, inputs, log, progress);
        _figures = WordOf(figures);
        _others =
        [
            ("version", ProductVersion.Text), ("criteria", inputs.Criteria.Sha256), ("setup", inputs.Setup.Sha256),
            ("files", string.Join('\n', inputs.Criteria.FileName, inputs.Setup.FileName, inputs.Impedance?.FileName)),
            ("events", inputs.EventsFile is { } events ? InputKey.HashOf(events) : null), ("readings", inputs.Impedance?.Sha256),

            // The same limits in another file, a frozen one for instance: no verdict changes, but what the audit says of them.
            .. inputs.Files.Select(file => ($"{file.Role} as a file {file.FileName}", (string?)file.Sha256)),
        ];
    }

    /// <summary>A choice of pictures as files and the command line name it.</summary>
    public static string WordOf(FigureChoice figures) => figures switch { FigureChoice.None => "none", FigureChoice.Summary => "summary", _ => "all" };

    /// <summary>Tells a person how far the run has come.</summary>
    public Progress Progress { get; }

    /// <summary>The run that stands in the folder, if nothing has changed since; else null.</summary>
    public RunDigest? AsBefore(ImmutableArray<RecordingEntry> entries, int jobs, CancellationToken cancel)
    {
        bool[] read = [.. InOrder.Run(entries, jobs, entry => IsKnown(entry, cancel))];
        return read.All(isRead => isRead) ? _place.AsBefore([.. entries.Select(entry => (entry.Id, _known[entry.Id].Stamp))], jobs) : null;
    }

    /// <summary>Does the work on one recording.</summary>
    public ScreenedRecording Screen(RecordingEntry entry, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        Progress.Starts(entry.RelativePath);
        try
        {
            (string sha256, FileState state, RecordingStamp stamp) = Inputs(entry);
            if (_place.TakeOver(entry.Id, stamp) is { } earlier)
            {
                return new ScreenedRecording(entry, stamp, earlier, WasTakenOver: true);
            }

            _log.Debug("auditing {Path:l}", entry.RelativePath);
            RecordingResult result = _engine.Audit(entry, _inputs, sha256, cancel);
            state.RequireStill(entry.FilePath, sha256);
            _place.Keep(result, stamp, cancel);
            return new ScreenedRecording(entry, stamp, WithoutViews(result));
        }
        catch (ChannelAuditException fault) when (fault.Kind == FaultKind.Recording)
        {
            _log.Debug(fault, "where the fault was found");
            return new ScreenedRecording(entry, null, null, Fault: fault);
        }
    }

    private (string Sha256, FileState State, RecordingStamp Stamp) Inputs(RecordingEntry entry) => _known.GetOrAdd(entry.Id, _ =>
    {
        FileState state = FileState.Of(entry.FilePath);
        string sha256 = InputKey.HashOf(entry.FilePath);
        Person person = Person.Of(_inputs.Setup, entry.RelativePath, participant => BidsParticipants.GroupOf(entry.FilePath, participant));
        return (sha256, state, new RecordingStamp(InputKey.Of(entry, sha256, [.. _others, ("participant", person.Participant), ("group", person.Group)]), _figures));
    });

    private bool IsKnown(RecordingEntry entry, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        Progress.Starts(entry.RelativePath);
        try
        {
            Inputs(entry);
            return true;
        }
        catch (ChannelAuditException)
        {
            return false;
        }
    }

    // What only pictures need is the largest part of a result, and it waits for its turn.
    private static RecordingResult WithoutViews(RecordingResult result) => result with
    {
        Channels = [.. result.Channels.Select(channel => channel with { View = null })],
        Pairs = [.. result.Pairs.Select(pair => pair with { View = null })],
    };
}
