using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Shares;

/// <summary>All shares of one run, to be put together.</summary>
public sealed class ShareSet
{
    private const int MostNamed = 10;

    private readonly ShareManifest _first;
    private readonly ImmutableArray<(string Folder, ShareManifest Share)> _shares;
    private readonly Dictionary<string, SharedRecording> _done = new(StringComparer.Ordinal);
    private readonly Dictionary<string, UnreadRecording> _unread = new(StringComparer.Ordinal);

    private ShareSet(ImmutableArray<(string Folder, ShareManifest Share)> shares)
    {
        (_shares, _first) = (shares, shares[0].Share);
        foreach ((string folder, ShareManifest share) in shares)
        {
            foreach ((string id, string inputs) in share.Done)
            {
                _done[id] = new SharedRecording(id, folder, new RecordingStamp(inputs, Figures));
            }

            foreach (UnreadRecording unread in share.Unread)
            {
                _unread[unread.Path] = unread;
            }
        }
    }

    /// <summary>Opens them.</summary>
    /// <param name="folders">Their folders, in any order.</param>
    /// <exception cref="ChannelAuditException">When one is none, is missing or given twice, is not of the same run, or cannot be read.</exception>
    public static ShareSet Open(IReadOnlyList<string> folders)
    {
        ImmutableArray<(string Folder, ShareManifest Share)> shares = [.. folders.Select(folder => (folder, Read(folder)))];
        RequireOneRun(shares);
        ShareSet set = new([.. shares.OrderBy(one => one.Share.Plan.Share.Number)]);
        set.RequireAll();
        return set;
    }

    /// <summary>The version that made them.</summary>
    public string Version => _first.Version;

    /// <summary>Every recording of the run in its order; it need not be within reach.</summary>
    public ImmutableArray<RecordingEntry> All => _first.Plan.All;

    /// <summary>The pictures that were asked for: <c>none</c>, <c>summary</c> or <c>all</c>.</summary>
    public string Figures => _first.Plan.Figures;

    /// <summary>Whether the run is over one recording.</summary>
    public bool IsAlone => _first.Plan.IsAlone;

    /// <summary>The files that the run was made with.</summary>
    public ImmutableArray<RunInput> Inputs => _first.Inputs;

    /// <summary>How many.</summary>
    public int Count => _shares.Length;

    /// <summary>Where a recording lies; null when it could not be read.</summary>
    public SharedRecording? Done(RecordingEntry entry) => _done.GetValueOrDefault(entry.Id);

    /// <summary>Why a recording could not be read.</summary>
    public UnreadRecording Unread(RecordingEntry entry) => _unread[entry.RelativePath];

    /// <summary>The fault of a recording that is not as the share was written.</summary>
    public static ChannelAuditException Damaged(SharedRecording recording) => ShareErrors.Damaged(recording.Folder, $"recordings/{recording.Id}");

    private static ShareManifest Read(string folder)
    {
        string file = Path.Combine(folder, ShareManifest.FileName);
        try
        {
            return File.Exists(file) ? ShareJson.Read(PlainFile.ReadAllBytes(file), file) : throw ShareErrors.NotAShare(folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw ShareErrors.CannotRead(file, fault);
        }
    }

    private static void RequireOneRun(ImmutableArray<(string Folder, ShareManifest Share)> shares)
    {
        (string first, ShareManifest same) = shares[0];
        Dictionary<RecordingShare, string> seen = [];
        foreach ((string folder, ShareManifest share) in shares)
        {
            if (same.DifferenceFrom(share) is { } difference)
            {
                throw ShareErrors.NotOneRun(first, folder, difference);
            }

            if (!seen.TryAdd(share.Plan.Share, folder))
            {
                throw ShareErrors.Twice(seen[share.Plan.Share], folder, share.Plan.Share);
            }
        }
    }

    private void RequireAll()
    {
        int of = _first.Plan.Share.Of;
        HashSet<int> there = [.. _shares.Select(one => one.Share.Plan.Share.Number)];
        int[] missing = [.. Enumerable.Range(1, of).Where(number => !there.Contains(number))];
        if (missing.Length > 0)
        {
            string named = string.Join(", ", missing.Take(MostNamed).Select(number => number.ToString(CultureInfo.InvariantCulture)));
            throw ShareErrors.Missing(missing.Length > MostNamed ? $"{named} and others" : named, of);
        }

        // A list changed by hand could leave one out in silence.
        if (All.FirstOrDefault(entry => !_done.ContainsKey(entry.Id) && !_unread.ContainsKey(entry.RelativePath)) is { } lost)
        {
            throw ShareErrors.Damaged(_shares[All.IndexOf(lost) % of].Folder, ShareManifest.FileName);
        }
    }
}
