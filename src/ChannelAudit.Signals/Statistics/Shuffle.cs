using ChannelAudit.Signals.Random;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Brings things into a random order, all orders equally likely (Fisher and Yates, as in Durstenfeld 1964).</summary>
public static class Shuffle
{
    /// <summary>Shuffles a span of at least one.</summary>
    public static void InPlace<T>(Span<T> things, Pcg32 random)
    {
        for (var last = things.Length - 1; last > 0; last--)
        {
            var other = (int)Below(random, (uint)last + 1);
            (things[last], things[other]) = (things[other], things[last]);
        }
    }

    // Draws from the incomplete last round are thrown away, so that no number is likelier than another.
    private static uint Below(Pcg32 random, uint bound)
    {
        var refused = unchecked(0u - bound) % bound;
        uint draw;
        do
        {
            draw = random.Next();
        }
        while (draw < refused);
        return draw % bound;
    }
}
