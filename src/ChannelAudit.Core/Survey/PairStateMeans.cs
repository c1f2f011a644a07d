using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>Mean spectra of a pair in each of its states while the recording goes by.</summary>
internal sealed record PairStateMeans(int Index, StateMeans Rest, StateMeans ActiveA, StateMeans ActiveB)
{
    /// <summary>Adds the present segments where they count.</summary>
    public void Add(SegmentBatch batch, int first)
    {
        Rest.Add(batch, first);
        ActiveA.Add(batch, first);
        ActiveB.Add(batch, first);
    }

    /// <summary>Whether any of some neighbouring segments counts in any state.</summary>
    public bool Wants(int first, int count) => Rest.Wants(first, count) || ActiveA.Wants(first, count) || ActiveB.Wants(first, count);

    /// <summary>The readings.</summary>
    public PairStateRows Rows(SegmentBatch shape) => new(Rest.Reading(shape), ActiveA.Reading(shape), ActiveB.Reading(shape));
}
