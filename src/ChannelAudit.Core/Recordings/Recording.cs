using System.Collections.Immutable;

namespace ChannelAudit.Recordings;

/// <summary>An opened recording: what the header says, and a source of samples that is read block by block.</summary>
/// <remarks>Time zero is the first stored sample. Dispose it to close the file.</remarks>
public sealed class Recording : IDisposable
{
    /// <summary>The file's name without its folder.</summary>
    public required string FileName { get; init; }

    /// <summary>The format as people call it: <c>EDF</c>, <c>EDF+C</c>, <c>EDF+D</c>, <c>BDF</c>, <c>BDF+C</c>, <c>BDF+D</c> or <c>text</c>.</summary>
    public required string Format { get; init; }

    /// <summary>Every signal of the file in file order, those that are not audited included.</summary>
    public required ImmutableArray<Channel> Channels { get; init; }

    /// <summary>Annotations in file order; onsets relative to the first stored sample.</summary>
    public ImmutableArray<Annotation> Annotations { get; init; } = [];

    /// <summary>What was odd about the file and how it was read all the same, in the order found.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];

    /// <summary>From the first stored sample to the end of the last one, gaps included, in seconds.</summary>
    public required double DurationS { get; init; }

    /// <summary>The samples.</summary>
    public required ISampleSource Samples { get; init; }

    /// <summary>The same recording with a reader of its own, for work on a second thread; null where all work stays on one.</summary>
    internal Recording? Beside { get; private init; }

    /// <summary>The same recording, on which work may take a second thread where its samples can be read by two. Only one of the two is disposed.</summary>
    internal Recording OnTwoThreads => Samples.Another() is { } other ? With(Samples, With(other, null)) : this;

    /// <inheritdoc/>
    public void Dispose() => Samples.Dispose();

    private Recording With(ISampleSource samples, Recording? beside) => new()
    {
        FileName = FileName,
        Format = Format,
        Channels = Channels,
        Annotations = Annotations,
        Warnings = Warnings,
        DurationS = DurationS,
        Samples = samples,
        Beside = beside,
    };
}
