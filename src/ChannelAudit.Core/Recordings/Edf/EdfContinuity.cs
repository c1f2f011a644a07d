namespace ChannelAudit.Recordings.Edf;

/// <summary>What a file says about the time between its records.</summary>
internal enum EdfContinuity
{
    /// <summary>Nothing: a plain file, continuous by definition.</summary>
    Plain,

    /// <summary>One record follows another without a gap.</summary>
    Continuous,

    /// <summary>Each record says when it starts.</summary>
    Discontinuous,
}
