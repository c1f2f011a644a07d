namespace ChannelAudit.Recordings.Text;

/// <summary>The steps of a time column, gaps set apart.</summary>
/// <param name="MeanS">Mean step.</param>
/// <param name="SdS">Standard deviation of the steps.</param>
/// <param name="LeastS">Shortest step.</param>
/// <param name="MostS">Longest step that is no gap.</param>
/// <param name="SpanS">Sum of the steps.</param>
/// <param name="Odd">Steps shorter than half the median, and gaps.</param>
/// <param name="GapRows">The rows behind gaps.</param>
internal sealed record TimeStep(double MeanS, double SdS, double LeastS, double MostS, double SpanS, long Odd, List<long> GapRows);
