using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
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
    /// <summary>The longest stretch of time that is drawn, in seconds.</summary>
    public const double LongestS = 300;

    private const int MostOthers = 4;

    // Neighbours of a trial say which trial it is; a blind person sees no farther than this.
    private const double BlindAroundS = 10;
    private const double AroundS = 0.5;
    private const double ShortestS = 0.02;

    /// <summary>What is shown of a cell at first, and how far one may look, in seconds from the first stored sample.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    public (double FromS, double ToS, double LeastS, double MostS) RangeOf(int number)
    {
        (RecordingResult result, _, CellResult cell) = Of(number);
        Trial trial = ReviewBook.TrialOf(result, cell);
        (double from, double to) = ((double)trial.WindowFromS, (double)trial.WindowToS);
        double around = Math.Max(AroundS, 0.15 * (to - from));
        if (book.Options.IsBlind)
        {
            return (from - around, Math.Min(to + around, from - around + LongestS), from - BlindAroundS, to + BlindAroundS);
        }

        // Before the recording there is nothing to see, unless a trial starts there.
        double least = Math.Min(0, from);
        double most = Math.Max(result.DurationS, to);
        double shownFrom = Math.Max(least, from - around);
        return (shownFrom, Math.Min(Math.Min(most, to + around), shownFrom + LongestS), least, most);
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
        return CellFigure.Render(Scene(number, from, to, look.Clamped(), cancel), look);
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

    private CellScene Scene(int number, double fromS, double toS, CellLook look, CancellationToken cancel)
    {
        ReviewCell place = book.Cells[number - 1];
        RecordingResult result = shelf.ResultOf(place.Recording);
        ChannelResult channel = result.Channels[place.Channel];
        CellResult cell = channel.Cells[place.Cell];
        Trial trial = ReviewBook.TrialOf(result, cell);
        (double windowFromS, double windowToS) = ((double)trial.WindowFromS, (double)trial.WindowToS);
        ScoringFilter? behind = look.IsBehind ? BehindFilter.Of(result) : null;
        return shelf.Use(place.Recording, file =>
        {
            Channel own = file.ChannelOf(channel.Label) ?? throw ReviewErrors.NotThere();
            CellScene scene = new()
            {
                Traces =
                [
                    .. Shown(result, place.Channel, cell)
                        .Select((one, i) => Trace(file, one, fromS, toS, look.Width, i == 0 ? behind : null, cancel))
                        .OfType<CellTrace>(),
                ],
                FromS = fromS,
                ToS = toS,
                WindowFromS = windowFromS,
                WindowToS = windowToS,
                ZeroS = ZeroOf(number),
                IsClock = !book.Options.IsBlind,
                Spectrum = file.Spectrum(own, windowFromS, windowToS, cancel, behind),
                HarmonicsHz = file.HarmonicsHz(own, result.Mains, cancel),
                BandFromHz = channel.BandFromHz,
                BandToHz = channel.BandToHz,
                Behind = behind?.InWords,
            };

            // What was found, and what only a look at the whole channel tells, a blind person is not shown.
            return book.Options.IsBlind ? scene : WithFaults(scene, file, own, (result, channel, cell), look.Width, cancel);
        });
    }

    private static CellScene WithFaults(
        CellScene scene, SignalFile file, Channel own, (RecordingResult Recording, ChannelResult Channel, CellResult Cell) place, int width, CancellationToken cancel)
    {
        // The window too where only a part of it is shown: a fault in the rest of it is still where the finding is from.
        double fromS = Math.Min(scene.FromS, scene.WindowFromS);
        double toS = Math.Max(scene.ToS, scene.WindowToS);
        ShownFaults faults = file.Faults(own, fromS, toS, (scene.ToS - scene.FromS) / width, cancel);
        return scene with
        {
            Marks = CellMarks.Of(place.Recording, place.Channel, place.Cell, faults.Marks),
            Rails = scene.Behind is null ? [.. new[] { faults.LowerRail, faults.UpperRail }.OfType<double>()] : [],
        };
    }

    private static CellTrace? Trace(SignalFile file, ChannelResult channel, double fromS, double toS, int columns, ScoringFilter? behind, CancellationToken cancel) =>
        file.ChannelOf(channel.Label) is not { } found ? null : new CellTrace(
            channel.Name, found.IsMicrovolts ? Quantities.Unit("uV") : string.Empty, file.Excerpt(found, fromS, toS, columns, cancel, behind));

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

    private (RecordingResult Result, ChannelResult Channel, CellResult Cell) Of(int number)
    {
        ReviewCell place = book.Cells[number - 1];
        RecordingResult result = book.BareOf(place.Recording);
        ChannelResult channel = result.Channels[place.Channel];
        return (result, channel, channel.Cells[place.Cell]);
    }
}
