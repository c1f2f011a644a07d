namespace ChannelAudit.Signals.Statistics;

/// <summary>Finds the median slope of all pairs of points without writing all slopes down.</summary>
/// <remarks>
/// A pair i before j has a slope below s exactly when y[j] − s·x[j] is below y[i] − s·x[i]: counting the slopes below s
/// is counting inversions, n·log n steps by merge sort. A bracket is narrowed by such counts until few slopes are left in
/// it; these are then the shifts an insertion sort makes from the order at the lower end to the order at the upper end
/// (the counting idea of Cole, Salowe, Steiger and Szemerédi 1989, from memory). Exact, unless the slope lies as near to
/// an end of the bracket as rounding reaches; then it is right within rounding.
/// </remarks>
internal sealed class SlopeSearch
{
    private const int MaximumSteps = 400;
    private const int StepsBetweenTieTrials = 8;
    private const int ThinnedPoints = 100;
    private const double NarrowestRelativeWidth = 1E-13;

    private readonly SlopePoints _points;
    private double[] _slopes = [];
    private long _slopesBelow;

    /// <summary>Copies the points.</summary>
    /// <param name="x">Ascending values, ties allowed.</param>
    /// <param name="y">As many values.</param>
    /// <exception cref="ArgumentException">The values of x do not ascend or are all equal, or a value is not finite.</exception>
    public SlopeSearch(ReadOnlySpan<double> x, ReadOnlySpan<double> y) => _points = new SlopePoints(x, y);

    /// <summary>Gives the median of the slopes of all pairs with different x.</summary>
    public double Median()
    {
        if (_points.SlopeScale == 0)
        {
            return 0;
        }

        var low = Select((_points.Pairs - 1) / 2);
        var high = Select(_points.Pairs / 2);
        return low == high ? low : low + (0.5 * (high - low));
    }

    /// <summary>Gives the slope of a rank, out of the slopes of the last bracket where it is among them.</summary>
    private double Select(long rank)
    {
        if (rank < _slopesBelow || rank - _slopesBelow >= _slopes.Length)
        {
            var bracket = Narrow(FirstBracket(rank), rank);
            _slopesBelow = bracket.Below;
            _slopes = _points.SlopesBetween(bracket.Low, bracket.High, 2 * _points.FewSlopes);
            if (_slopes.Length < bracket.Inside)
            {
                return AmongTies(bracket);
            }
        }

        return Quantiles.SelectInPlace(_slopes, (int)(rank - _slopesBelow));
    }

    /// <summary>Answers for a bracket that rounding lets shrink no further: all slopes in it are one and the same.</summary>
    private double AmongTies(SlopeBracket bracket)
    {
        var slope = _slopes.Length > 0 ? Quantiles.Median(_slopes) : bracket.Low + (bracket.Width / 2);
        _slopes = [];
        return slope;
    }

    /// <summary>Guesses from a thinned set of points and widens until the rank is inside.</summary>
    private SlopeBracket FirstBracket(long rank)
    {
        var (guess, width) = _points.ThinnedSlope(ThinnedPoints);
        for (width = Math.Max(width, NarrowestRelativeWidth * _points.SlopeScale); ; width *= 4)
        {
            var below = _points.CountBelow(guess - width);
            var belowHigh = _points.CountBelow(guess + width);
            if (below <= rank && belowHigh > rank)
            {
                return new SlopeBracket(guess - width, guess + width, below, belowHigh);
            }
        }
    }

    /// <summary>Narrows the bracket until few slopes are left in it, or rounding lets it shrink no further.</summary>
    private SlopeBracket Narrow(SlopeBracket bracket, long rank)
    {
        var narrowest = NarrowestRelativeWidth * _points.SlopeScale;
        for (var step = 0; step < MaximumSteps && bracket.Inside > _points.FewSlopes && bracket.Width > 3 * narrowest; step++)
        {
            if (step % StepsBetweenTieTrials == StepsBetweenTieTrials - 1)
            {
                // Coarse steps of the signal give one slope to very many pairs, which halving would take long to isolate.
                var tie = Quantiles.MedianInPlace(_points.SlopesBetween(bracket.Low, bracket.High, _points.FewSlopes));
                bracket = Cut(Cut(bracket, tie - narrowest, rank), tie + narrowest, rank);
            }

            var margin = (step % 3) switch { 0 => -_points.FewSlopes / 4, 1 => _points.FewSlopes / 4, _ => 0 };
            var aim = step % 3 == 2 ? 0.5 : (double)(rank + margin - bracket.Below) / bracket.Inside;
            bracket = Cut(bracket, bracket.Low + (Math.Clamp(aim, 0.01, 0.99) * bracket.Width), rank);
        }

        return bracket;
    }

    /// <summary>Keeps the side of a slope on which the rank lies; a slope outside the bracket changes nothing.</summary>
    private SlopeBracket Cut(SlopeBracket bracket, double slope, long rank)
    {
        if (slope <= bracket.Low || slope >= bracket.High)
        {
            return bracket;
        }

        var below = _points.CountBelow(slope);
        return below > rank
            ? bracket with { High = slope, BelowHigh = below }
            : bracket with { Low = slope, Below = below };
    }
}
