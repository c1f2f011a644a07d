namespace ChannelAudit.Reports.Figures;

/// <summary>The size of a figure in pixels.</summary>
public readonly record struct FigureSize
{
    private const int Smallest = 320;
    private const int Largest = 8000;

    /// <summary>Makes a size.</summary>
    /// <param name="width">Width in pixels, 320 to 8000.</param>
    /// <param name="height">Height in pixels, 320 to 8000.</param>
    /// <exception cref="ArgumentOutOfRangeException">When a side is outside this range.</exception>
    public FigureSize(int width, int height)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, Smallest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(width, Largest);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, Smallest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(height, Largest);
        Width = width;
        Height = height;
    }

    /// <summary>For reports: 1600 x 900.</summary>
    public static FigureSize Full { get; } = new(1600, 900);

    /// <summary>For a glance: 800 x 450.</summary>
    public static FigureSize Small { get; } = new(800, 450);

    /// <summary>Width in pixels.</summary>
    public int Width { get; }

    /// <summary>Height in pixels.</summary>
    public int Height { get; }
}
