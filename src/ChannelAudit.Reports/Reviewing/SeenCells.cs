using ChannelAudit.Decisions;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Which cells a person has decided about with everything in view before judging them blind: who knows the computed verdict cannot judge blind any more.</summary>
/// <remarks>A decision about a whole trial or channel counts for each of its cells, and one that was taken back counts, too.</remarks>
internal sealed class SeenCells
{
    private readonly Dictionary<(string? Recording, string? Channel, int? Trial), int> _open = [];
    private readonly Dictionary<(string? Recording, string? Channel, int? Trial), int> _blind = [];

    /// <summary>Looks through a ledger.</summary>
    /// <param name="ledger">The ledger.</param>
    /// <param name="by">Who.</param>
    public SeenCells(Ledger ledger, string? by)
    {
        foreach (Decision line in ledger.Lines.Where(line => line.Action == DecisionAction.Decide && string.Equals(line.By, by, StringComparison.Ordinal)))
        {
            (line.Blind ? _blind : _open).TryAdd((line.Recording, line.Channel, line.Trial?.Number), line.Number);
        }
    }

    /// <summary>Whether a cell is one of them.</summary>
    /// <param name="result">The recording.</param>
    /// <param name="cell">The cell.</param>
    public bool Hold(RecordingResult result, ReviewCell cell)
    {
        ChannelResult channel = result.Channels[cell.Channel];
        int trial = channel.Cells[cell.Cell].Trial;
        int blind = _blind.GetValueOrDefault((result.Id, channel.Name, trial), int.MaxValue);
        (string?, string?, int?)[] covering = [(result.Id, channel.Name, trial), (result.Id, null, trial), (result.Id, channel.Name, null)];
        return covering.Any(subject => _open.TryGetValue(subject, out int line) && line < blind);
    }
}
