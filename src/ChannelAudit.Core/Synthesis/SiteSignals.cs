namespace ChannelAudit.Synthesis;

/// <summary>The signals of one site while they are made, one value a sample, in µV.</summary>
/// <remarks>Buffers are used again along the way: the names say what is in them at which step.</remarks>
internal sealed class SiteSignals
{
    /// <summary>Makes empty signals.</summary>
    /// <param name="length">Samples.</param>
    /// <param name="site">The site.</param>
    internal SiteSignals(int length, SitePlan site)
    {
        Site = site;
        LevelUv = new double[length];
        Muscle = new double[length];
        First = new double[length];
        Second = new double[length];
    }

    /// <summary>The plan of the site.</summary>
    internal SitePlan Site { get; }

    /// <summary>µV rms of the muscle; set before the sources.</summary>
    internal double[] LevelUv { get; }

    /// <summary>What this site's own muscle gives between the electrodes; never changed after it was made.</summary>
    internal double[] Muscle { get; }

    /// <summary>Potential at the first electrode; after <see cref="TakeDifference"/> the channel's voltage.</summary>
    internal double[] First { get; }

    /// <summary>Potential at the second electrode.</summary>
    internal double[] Second { get; }

    /// <summary>The channel's voltage, from <see cref="TakeDifference"/> on.</summary>
    internal double[] Input => First;

    /// <summary>What the converter gave.</summary>
    internal int[] Codes { get; set; } = [];

    /// <summary>The lowest code; null: the converter's own.</summary>
    internal int? LowestCode { get; set; }

    /// <summary>The highest code; null: the converter's own.</summary>
    internal int? HighestCode { get; set; }

    /// <summary>The channel's offset in µV.</summary>
    internal double OffsetUv { get; set; }

    /// <summary>The channel's own slow settling in µV/min.</summary>
    internal double SettlingUvPerMin { get; set; }

    /// <summary>Stretches that this channel does not have.</summary>
    internal List<SampleSpan> Missing { get; } = [];

    /// <summary>Adds a voltage between the two electrodes.</summary>
    internal void AddAcross(int sample, double microvolts)
    {
        First[sample] += microvolts / 2;
        Second[sample] -= microvolts / 2;
    }

    /// <summary>Goes over from two potentials to their difference.</summary>
    internal void TakeDifference()
    {
        for (int i = 0; i < First.Length; i++)
        {
            First[i] -= Second[i];
        }
    }
}
