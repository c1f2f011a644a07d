namespace ChannelAudit.Recordings.Edf;

/// <summary>What the header says about one signal. Limits that are no numbers are null.</summary>
/// <param name="Label">The label as it stands in the file.</param>
/// <param name="Unit">The physical dimension as it stands in the file.</param>
/// <param name="PhysicalMin">Value of <paramref name="DigitalMin"/> in the unit; may be above <paramref name="PhysicalMax"/> (inverted polarity).</param>
/// <param name="PhysicalMax">Value of <paramref name="DigitalMax"/> in the unit.</param>
/// <param name="DigitalMin">The lowest code.</param>
/// <param name="DigitalMax">The highest code.</param>
/// <param name="Prefilter">The prefilter field.</param>
/// <param name="SamplesPerRecord">Samples in a record, 0 or more.</param>
/// <param name="RecordOffset">Bytes from the start of a record to the signal's first sample.</param>
internal sealed record EdfSignalHeader(
    string Label,
    string Unit,
    double? PhysicalMin,
    double? PhysicalMax,
    int? DigitalMin,
    int? DigitalMax,
    string Prefilter,
    int SamplesPerRecord,
    long RecordOffset)
{
    /// <summary>Whether the signal holds annotations instead of samples.</summary>
    public bool IsAnnotations => SignalLabel.IsAnnotations(Label);
}
