using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Pilot;

/// <summary>Says from taps on lead wires which sites gel joins.</summary>
/// <remarks>
/// A wire that is tapped moves its own electrode's potential and no other's. Gel of resistance R between two contacts of impedance Z hands
/// Z/(Z+R) of it on, with
/// the same shape (the node equations of methods 1.2): a share of 0.15 is a joint of less than 6 Z, one below 0.05 more than 19 Z, which no score notices. A
/// tap that shakes the head moves every electrode, each in its own way: then the shapes differ, or all sites show it and nothing follows.
/// </remarks>
internal sealed class TapReader
{
    private const double JoinedShare = 0.15;
    private const double ApartShare = 0.05;
    private const double SameShape = 0.9;
    private const double SeenTimes = 8;
    private const double LeastUv = 5;
    private const double AroundS = 0.06;
    private const decimal QuietS = 5;
    private const int FewestTaps = 2;

    private readonly Recording recording;
    private readonly ImmutableArray<(Channel Channel, string Name)> channels;
    private readonly double mainsHz;

    /// <summary>Prepares to read.</summary>
    /// <param name="recording">The recording, taps included.</param>
    /// <param name="channels">The audited channels and their names.</param>
    /// <param name="mainsHz">The mains frequency.</param>
    public TapReader(Recording recording, ImmutableArray<(Channel Channel, string Name)> channels, double mainsHz)
    {
        this.recording = recording;
        this.channels = channels;
        this.mainsHz = mainsHz;
    }

    /// <summary>Reads all taps.</summary>
    /// <param name="taps">Where they are; at least one.</param>
    public TapReport Read(ImmutableArray<(string Site, decimal FromS, decimal ToS)> taps)
    {
        decimal first = taps.Min(tap => tap.FromS);
        Dictionary<string, SiteTaps> seen = new(StringComparer.Ordinal);
        foreach (IGrouping<string, (string Site, decimal FromS, decimal ToS)> site in taps.GroupBy(tap => tap.Site, StringComparer.Ordinal))
        {
            seen.Add(site.Key, TapsOn(site.Key, [.. site], first));
        }

        ImmutableArray<TappedPair>.Builder pairs = ImmutableArray.CreateBuilder<TappedPair>();
        for (int a = 0; a < channels.Length; a++)
        {
            for (int b = a + 1; b < channels.Length; b++)
            {
                SiteTaps? onA = seen.GetValueOrDefault(channels[a].Name);
                SiteTaps? onB = seen.GetValueOrDefault(channels[b].Name);
                if (onA is not null || onB is not null)
                {
                    TapVerdict verdict = Combine(onA?.VerdictOn(b), onB?.VerdictOn(a));
                    pairs.Add(new TappedPair(channels[a].Name, channels[b].Name, onA?.ShareIn(b), onB?.ShareIn(a), verdict));
                }
            }
        }

        return new TapReport(pairs.ToImmutable(), [.. seen.Where(pair => pair.Value.Count < FewestTaps).Select(pair => pair.Key)]);
    }

    // Gel hands on both ways; what goes one way only is no gel, or was not tapped well.
    private static TapVerdict Combine(TapVerdict? one, TapVerdict? other) => (one, other) switch
    {
        ({ } verdict, null) => verdict,
        (null, { } verdict) => verdict,
        _ => one == other ? one ?? TapVerdict.Open
            : one == TapVerdict.Open ? other ?? TapVerdict.Open
            : other == TapVerdict.Open ? one ?? TapVerdict.Open
            : TapVerdict.Open,
    };

    private SiteTaps TapsOn(string site, ImmutableArray<(string Site, decimal FromS, decimal ToS)> stretches, decimal firstS)
    {
        int tapped = channels.Select((channel, i) => (channel.Name, i)).First(one => string.Equals(one.Name, site, StringComparison.Ordinal)).i;
        double limit = Math.Max(LeastUv, SeenTimes * QuietScale(channels[tapped].Channel, firstS));
        SiteTaps all = new(channels.Length, tapped);
        foreach ((_, decimal fromS, decimal toS) in stretches)
        {
            double[][] signals = [.. channels.Select(channel => TapSignal.Read(recording, channel.Channel, fromS, toS, mainsHz))];
            foreach ((int from, int to) in Bursts(signals[tapped], limit, channels[tapped].Channel.Rate.Value))
            {
                all.Add(signals, from, to);
            }
        }

        return all;
    }

    private double QuietScale(Channel channel, decimal firstS)
    {
        double[] quiet = TapSignal.Read(recording, channel, Math.Max(0, firstS - QuietS), firstS, mainsHz);
        return quiet.Length == 0 ? 0 : RobustScale.Mad(quiet);
    }

    private static IEnumerable<(int From, int To)> Bursts(double[] signal, double limit, double rateHz)
    {
        int around = (int)Math.Round(AroundS * rateHz);
        int from = -1, last = 0;
        for (int i = 0; i < signal.Length; i++)
        {
            if (Math.Abs(signal[i]) <= limit)
            {
                continue;
            }

            if (from >= 0 && i - last > 2 * around)
            {
                yield return (Math.Max(0, from - around), Math.Min(signal.Length, last + around));
                from = i;
            }

            from = from < 0 ? i : from;
            last = i;
        }

        if (from >= 0)
        {
            yield return (Math.Max(0, from - around), Math.Min(signal.Length, last + around));
        }
    }

    /// <summary>The taps on one site and what of them every channel shows.</summary>
    private sealed class SiteTaps(int channels, int tapped)
    {
        private readonly List<double>[] shares = [.. Enumerable.Range(0, channels).Select(_ => new List<double>())];

        /// <summary>Taps seen in the tapped channel.</summary>
        public int Count { get; private set; }

        public void Add(double[][] signals, int from, int to)
        {
            Count++;
            ReadOnlySpan<double> own = signals[tapped].AsSpan(from, to - from);
            for (int other = 0; other < channels; other++)
            {
                // Another rate, or a gap, leaves the tap unseen there.
                if (other != tapped && signals[other].Length == signals[tapped].Length)
                {
                    shares[other].Add(Share(own, signals[other].AsSpan(from, to - from)));
                }
            }
        }

        /// <summary>The largest share of a tap that shows in a channel, without sign; null when none was seen.</summary>
        public double? ShareIn(int other) => shares[other].Count == 0 ? null : shares[other].Max(Math.Abs);

        public TapVerdict VerdictOn(int other)
        {
            TapVerdict plain = Plain(other);
            bool reachesAll = channels > 2 && Enumerable.Range(0, channels).Where(i => i != tapped).All(i => Plain(i) == TapVerdict.Joined);
            return reachesAll ? TapVerdict.Open : plain;
        }

        // One of the two wires of a site may be the joined one: a quarter of the taps is enough.
        private TapVerdict Plain(int other)
        {
            List<double> seen = shares[other];
            int joined = seen.Count(share => Math.Abs(share) >= JoinedShare);
            return seen.Count < FewestTaps ? TapVerdict.Open
                : joined >= Math.Max(FewestTaps, seen.Count / 4.0) ? TapVerdict.Joined
                : seen.All(share => Math.Abs(share) < ApartShare) ? TapVerdict.Apart
                : TapVerdict.Open;
        }

        // What has another shape did not come through gel: its share counts as far as the shapes agree.
        private static double Share(ReadOnlySpan<double> own, ReadOnlySpan<double> other)
        {
            double ownPower = 0, otherPower = 0, both = 0;
            for (int i = 0; i < own.Length; i++)
            {
                ownPower += own[i] * own[i];
                otherPower += other[i] * other[i];
                both += own[i] * other[i];
            }

            if (ownPower <= 0 || otherPower <= 0)
            {
                return 0;
            }

            double share = both / ownPower;
            double shape = Math.Abs(both) / Math.Sqrt(ownPower * otherPower);
            return shape >= SameShape || Math.Abs(share) < JoinedShare
                ? share
                : Math.CopySign(Math.Min(Math.Abs(share), (JoinedShare + ApartShare) / 2), share);
        }
    }
}
