using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Makes the picture of a cell on demand.</summary>
/// <param name="book">The cells.</param>
/// <param name="shelf">The recordings.</param>
public sealed class CellPictures(ReviewBook book, RecordingShelf shelf)
{
    private const int MostOthers = 4;

    // Neighbours of a trial say which trial it is; a blind person sees no farther than this.
    private const double BlindAroundS = 10;
    private const double AroundS = 0.5;
    private const double LongestS = 120;
    private const double ShortestS = 0.02;

    /// <summary>What is shown of a cell at first, and how far one may look, in seconds from the first stored sample.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    public (double FromS, double ToS, double LeastS, double MostS) RangeOf(int number)
    {
        (RecordingResult result, _, CellResult cell) = Of(number);
        Trial trial = ReviewBook.TrialOf(result, cell);
        (double from, double to) = ((double)trial.WindowFromS, (double)trial.WindowToS);
        double around = Math.Max(AroundS, 0.15 * (to - from));
        (double least, double most) = book.Options.IsBlind
            ? (from - BlindAroundS, to + BlindAroundS)
            : (Math.Min(0, from - around), Math.Max(result.DurationS, to + around));
        return (from - around, Math.Min(to + around, from - around + LongestS), least, most);
    }

    /// <summary>What the page calls zero: the start of the recording, or in a blind review that of the window.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    public double ZeroOf(int number)
    {
        (RecordingResult result, _, CellResult cell) = Of(number);
        return book.Options.IsBlind ? (double)ReviewBook.TrialOf(result, cell).WindowFromS : 0;
    }

    /// <summary>Draws a cell.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    /// <param name="fromS">Start of what is shown, counted from what the page calls zero.</param>
    /// <param name="toS">End of what is shown.</param>
    /// <param name="look">Size and ground.</param>
    /// <param name="cancel">Ends the reading.</param>
    /// <exception cref="ChannelAuditException">When the recording is not there, or cannot be read.</exception>
    public byte[] Render(int number, double fromS, double toS, CellLook look, CancellationToken cancel)
    {
        double zero = ZeroOf(number);
        (_, _, double least, double most) = RangeOf(number);
        double from = Math.Clamp(fromS + zero, least, most - ShortestS);
        double to = Math.Clamp(toS + zero, from + ShortestS, Math.Min(most, from + LongestS));
        return CellFigure.Render(Scene(number, from, to, look.Clamped().Width, cancel), look);
    }

    /// <summary>The picture that the audit holds of a cell's channel; null when it holds none, and in a blind review, since it shows verdicts.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    public string? SheetOf(int number)
    {
        if (book.Options.IsBlind)
        {
            return null;
        }

        (RecordingResult result, ChannelResult channel, _) = Of(number);
        string path = Path.Combine(book.Options.Folder, AuditWriter.Place(result.Id, FigureFile.SheetOf(result, channel)));
        return File.Exists(path) ? path : null;
    }

    private CellScene Scene(int number, double fromS, double toS, int columns, CancellationToken cancel)
    {
        ReviewCell place = book.Cells[number - 1];
        RecordingResult result = shelf.ResultOf(place.Recording);
        ChannelResult channel = result.Channels[place.Channel];
        CellResult cell = channel.Cells[place.Cell];
        Trial trial = ReviewBook.TrialOf(result, cell);
        (double windowFromS, double windowToS) = ((double)trial.WindowFromS, (double)trial.WindowToS);
        return shelf.Use(place.Recording, file => new CellScene
        {
            Traces = [.. Shown(result, place.Channel, cell).Select(one => Trace(file, one, fromS, toS, columns, cancel)).OfType<CellTrace>()],
            FromS = fromS,
            ToS = toS,
            WindowFromS = windowFromS,
            WindowToS = windowToS,
            ZeroS = ZeroOf(number),
            Spectrum = file.ChannelOf(channel.Label) is { } own ? file.Spectrum(own, windowFromS, windowToS, cancel) : throw ReviewErrors.NotThere(),
            MainsHz = result.Mains.Hz,
            BandFromHz = channel.BandFromHz,
            BandToHz = channel.BandToHz,
            Marks = book.Options.IsBlind ? [] : Marks(result, channel, cell),
        });
    }

    private static CellTrace? Trace(SignalFile file, ChannelResult channel, double fromS, double toS, int columns, CancellationToken cancel) =>
        file.ChannelOf(channel.Label) is not { } found ? null : new CellTrace(
            channel.Name, found.IsMicrovolts ? Quantities.Unit("uV") : string.Empty, file.Excerpt(found, fromS, toS, columns, cancel));

    // Its own channel, then those that findings join it with, then the nearest in file order. What a blind person sees must not depend on findings.
    private ChannelResult[] Shown(RecordingResult result, int own, CellResult cell)
    {
        HashSet<string> joined = result.Channels[own].Findings.Concat(cell.Findings)
            .Where(finding => !book.Options.IsBlind && finding.Grade > Grade.Pass)
            .SelectMany(finding => finding.Channels)
            .ToHashSet(StringComparer.Ordinal);
        return
        [
            result.Channels[own],
            .. Enumerable.Range(0, result.Channels.Length)
                .Where(place => place != own)
                .OrderBy(place => joined.Contains(result.Channels[place].Name) ? 0 : 1)
                .ThenBy(place => Math.Abs(place - own))
                .ThenBy(place => place)
                .Take(MostOthers)
                .Select(place => result.Channels[place]),
        ];
    }

    private static ImmutableArray<CellMarking> Marks(RecordingResult result, ChannelResult channel, CellResult cell) =>
    [
        .. cell.Reasons
            .SelectMany(reason => EvidenceRow.Of(result, channel, reason).Where(row => row.Cell?.Trial == cell.Trial))
            .SelectMany(row => row.Findings)
            .Where(finding => finding.Grade > Grade.Pass && !ReasonPhrase.IsShareOfTrials(finding))
            .Select(finding => new CellMarking(finding.FromS, finding.ToS, ReasonLetters.For(finding.Reason), finding.Grade)),
    ];

    private (RecordingResult Result, ChannelResult Channel, CellResult Cell) Of(int number)
    {
        ReviewCell place = book.Cells[number - 1];
        RecordingResult result = book.BareOf(place.Recording);
        ChannelResult channel = result.Channels[place.Channel];
        return (result, channel, channel.Cells[place.Cell]);
    }
}
