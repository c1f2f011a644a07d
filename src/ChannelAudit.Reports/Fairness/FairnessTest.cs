namespace ChannelAudit.Reports.Fairness;

/// <summary>How a difference was tested.</summary>
public enum FairnessTest
{
    /// <summary>Not at all; the note says why.</summary>
    None,

    /// <summary>Fisher's exact test: one unit a participant, two groups.</summary>
    Fisher,

    /// <summary>Labels exchanged within each participant.</summary>
    Within,

    /// <summary>Labels exchanged among participants.</summary>
    Between,
}
