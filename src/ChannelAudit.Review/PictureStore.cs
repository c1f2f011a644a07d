namespace ChannelAudit.Review;

/// <summary>The pictures that were made last, up to a number of bytes: the next one is asked for ahead, and again when it is shown. Safe for use by several threads.</summary>
/// <param name="most">Bytes at most.</param>
internal sealed class PictureStore(long most)
{
    private readonly Lock _gate = new();
    private readonly LinkedList<(string Key, byte[] Png)> _kept = [];
    private readonly Dictionary<string, LinkedListNode<(string Key, byte[] Png)>> _places = new(StringComparer.Ordinal);
    private long _bytes;

    /// <summary>Bytes kept.</summary>
    public long Bytes
    {
        get
        {
            lock (_gate)
            {
                return _bytes;
            }
        }
    }

    /// <summary>A picture, kept or made.</summary>
    /// <param name="key">What it shows.</param>
    /// <param name="make">Makes it.</param>
    public byte[] Get(string key, Func<byte[]> make)
    {
        lock (_gate)
        {
            if (_places.TryGetValue(key, out LinkedListNode<(string Key, byte[] Png)>? node))
            {
                _kept.Remove(node);
                _kept.AddFirst(node);
                return node.Value.Png;
            }
        }

        byte[] png = make();
        lock (_gate)
        {
            Keep(key, png);
        }

        return png;
    }

    private void Keep(string key, byte[] png)
    {
        if (_places.ContainsKey(key) || png.Length > most)
        {
            return;
        }

        _places.Add(key, _kept.AddFirst((key, png)));
        _bytes += png.Length;
        while (_bytes > most)
        {
            (string old, byte[] bytes) = _kept.Last!.Value;
            _kept.RemoveLast();
            _places.Remove(old);
            _bytes -= bytes.Length;
        }
    }
}
