using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>What a sheet is about, and its sizes.</summary>
/// <param name="Recording">The recording.</param>
/// <param name="Channel">The channel.</param>
/// <param name="View">Its trace and spectrum.</param>
/// <param name="Scale">Sizes of text and space.</param>
internal sealed record SheetSubject(RecordingResult Recording, ChannelResult Channel, ChannelView View, RibbonScale Scale)
{
    /// <summary>The unit of the samples as figures write it; empty for raw codes.</summary>
    public string Unit => View.IsMicrovolts ? Quantities.Unit("uV") : string.Empty;

    /// <summary>A number with the unit of the samples.</summary>
    public string With(double value) => $"{Quantities.Short(value)} {Unit}".TrimEnd();

    /// <summary>The value of a measure over the whole recording, or null.</summary>
    public double? Measure(string name) => Channel.Measures.ValueOf(name);

    /// <summary>The text of axes and panels.</summary>
    public TextStyle Note => Scale.Note;
}
