using System.Collections;
using System.Runtime.InteropServices;

namespace ChannelAudit.Measures;

/// <summary>A list of numbers that grows with a recording: in memory as long as that is short, else in pages of a file but for the last one and the one last looked at.</summary>
/// <typeparam name="T">A number, or a few of them.</typeparam>
/// <remarks>One thread adds, then any may read. Cheap when it is gone through in order; any other order reads a page each time it leaves one.</remarks>
public sealed class Column<T> : IReadOnlyList<T>
    where T : unmanaged
{
    // Two hours of half seconds; an hour stays in memory whole.
    private const int UsuallyInMemory = 1 << 14;
    private const int PageBits = 10;
    private const int PageLength = 1 << PageBits;

    private readonly Spill spill;
    private readonly int inMemory;
    private readonly List<long> places = [];
    private T[] own = [];
    private Page? looked;

    /// <summary>Starts an empty list.</summary>
    /// <param name="spill">Takes what does not stay in memory.</param>
    /// <param name="inMemory">Up to how many entries all of them stay, in whole pages of 1024.</param>
    public Column(Spill? spill = null, int inMemory = UsuallyInMemory) => (this.spill, this.inMemory) = (spill ?? new Spill(), inMemory);

    /// <inheritdoc/>
    public int Count { get; private set; }

    /// <inheritdoc/>
    public T this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
            int kept = places.Count << PageBits;
            if (index >= kept)
            {
                return own[index - kept];
            }

            return PageAt(index >> PageBits).Entries[index & (PageLength - 1)];
        }
    }

    /// <summary>Adds an entry behind the last.</summary>
    public void Add(T value)
    {
        int inOwn = Count - (places.Count << PageBits);
        if (inOwn == own.Length)
        {
            Array.Resize(ref own, Math.Max(PageLength, Math.Min(inMemory, 2 * own.Length)));
        }

        own[inOwn] = value;
        Count++;
        if (inOwn + 1 == inMemory || (places.Count > 0 && inOwn + 1 == PageLength))
        {
            KeepPages(inOwn + 1);
        }
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator()
    {
        for (int i = 0; i < Count; i++)
        {
            yield return this[i];
        }
    }

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    // A page is never changed, so that readers on several threads do not disturb one another.
    private Page PageAt(int number)
    {
        Page? page = looked;
        if (page is null || page.Number != number)
        {
            page = new Page(number, new T[PageLength]);
            spill.Read(places[number], MemoryMarshal.AsBytes(page.Entries.AsSpan()));
            looked = page;
        }

        return page;
    }

    private void KeepPages(int length)
    {
        for (int from = 0; from < length; from += PageLength)
        {
            places.Add(spill.Keep(MemoryMarshal.AsBytes(own.AsSpan(from, PageLength))));
        }

        own = own.Length == PageLength ? own : new T[PageLength];
    }

    private sealed record Page(int Number, T[] Entries);
}
