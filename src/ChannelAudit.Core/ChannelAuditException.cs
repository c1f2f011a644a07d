namespace ChannelAudit;

/// <summary>A fault in what the user gave us: the only exception a user ever sees, as one <c>error:</c> and one <c>hint:</c> line.</summary>
/// <remarks>Messages are made by factory methods, one file an area (<c>RecordingErrors</c>, <c>SetupErrors</c>, ...).</remarks>
public sealed class ChannelAuditException : Exception
{
    /// <summary>Makes the fault with the next step a person can take.</summary>
    /// <param name="kind">Decides the exit code.</param>
    /// <param name="message">One line: FILE, place: what was found.</param>
    /// <param name="hint">One line: what to do.</param>
    /// <param name="inner">The lower-level fault, for the verbose log only.</param>
    public ChannelAuditException(FaultKind kind, string message, string hint, Exception? inner = null)
        : base(message, inner)
    {
        Kind = kind;
        Hint = hint;
    }

    /// <summary>Whose fault it is: decides the exit code.</summary>
    public FaultKind Kind { get; }

    /// <summary>One line that says what to do next.</summary>
    public string Hint { get; }
}
