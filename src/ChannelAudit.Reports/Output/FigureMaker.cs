using System.Collections.Immutable;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Output;

/// <summary>Draws the pictures of one recording, in the order in which they are listed.</summary>
/// <param name="recording">The recording.</param>
/// <param name="cancel">Ends the drawing.</param>
public delegate ImmutableArray<FigureFile> FigureMaker(RecordingResult recording, CancellationToken cancel);
