using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Results;

namespace ChannelAudit.Cli.Screening;

/// <summary>Where the results of a run go.</summary>
internal interface IScreenOutput : IDisposable
{
    /// <summary>Whether an audit stands there whose recordings may be unchanged.</summary>
    bool HasAudit { get; }

    /// <summary>Recordings of the audit that stands there which are not among these: their results go at the end of the run.</summary>
    ImmutableArray<string> NotAmong(IEnumerable<string> ids);

    /// <summary>The run that stands there, if it is over just these recordings, all unchanged, and whole; else null.</summary>
    /// <param name="recordings">Ids and from what each would be made.</param>
    /// <param name="jobs">Threads.</param>
    RunDigest? AsBefore(IReadOnlyList<(string Id, RecordingStamp Stamp)> recordings, int jobs);

    /// <summary>The result of a recording that an earlier run made from the same; null when there is none. Any thread.</summary>
    RecordingResult? TakeOver(string id, RecordingStamp stamp);

    /// <summary>Draws a recording's pictures and writes its files. Any thread.</summary>
    void Keep(RecordingResult recording, RecordingStamp stamp, CancellationToken cancel);

    /// <summary>Adds a recording to the tables, in their order.</summary>
    void Add(RecordingResult recording, RecordingStamp stamp);

    /// <summary>Recordings whose study of planted faults is of other inputs, and goes at the end of the run.</summary>
    ImmutableArray<string> OutdatedStudies { get; }

    /// <summary>Puts everything into its place.</summary>
    /// <exception cref="ChannelAuditException">When the folder cannot be written.</exception>
    RunDigest Finish(ImmutableArray<UnreadRecording> unread, CancellationToken cancel);

    /// <summary>Prints what a person reads first.</summary>
    /// <param name="digest">The run.</param>
    /// <param name="isUnchanged">Whether it stood there before.</param>
    /// <param name="output">Where to.</param>
    void Print(RunDigest digest, bool isUnchanged, TextWriter output);
}
