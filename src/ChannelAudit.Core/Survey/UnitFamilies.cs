using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>Leaves out spikes that one motor unit made, wherever in the recording it fired: four others at least alike in shape, sign and height, hardly any turned over.</summary>
/// <remarks>
/// A large unit that is recruited late fires a few times at the height of each contraction, too seldom to be known within a second (<see cref="MotorUnits"/>).
/// A unit also fires several times in a row: this spike has a fellow within half a second, and so has on average each of the family. Their energy lies
/// where a sharp unit's can: the pops of one contact can be alike too, but they are steep or recover slowly. Engineering judgement.
/// </remarks>
internal static class UnitFamilies
{
    private const int LeastAlike = 4;
    private const int MostTurned = 4;

    // Beyond this many neighbours in time the answer would take too long.
    private const int Neighbours = 1000;

    /// <summary>The spikes that are no unit's.</summary>
    /// <param name="spikes">All spikes with the shape of a pop, in order of time.</param>
    /// <param name="rateHz">Samples per second.</param>
    public static List<Pop> Without(List<Spike> spikes, double rateHz)
    {
        long near = (long)(MotorUnits.ReachSeconds * rateHz);
        return [.. Enumerable.Range(0, spikes.Count).Where(i => !spikes[i].IsOfTrain && !IsOfUnit(spikes, i, near)).Select(i => spikes[i].Pop)];
    }

    private static bool IsOfUnit(List<Spike> spikes, int index, long near)
    {
        Spike one = spikes[index];
        if (one.Alike == 0 || one.Pop.Spectrum is not { HasPhases: true })
        {
            return false;
        }

        bool mayBe = one.Pop.Spectrum is { MayBeUnit: true };
        int alike = mayBe ? one.Alike : 0;
        int family = 1;
        int turned = one.Turned;
        int fellows = one.Alike;
        for (int i = Math.Max(0, index - Neighbours); i < Math.Min(spikes.Count, index + Neighbours); i++)
        {
            Spike other = spikes[i];
            bool mayBeKin = other.Pop.Spectrum is { MayBeUnit: true };
            int kin = (mayBe || mayBeKin) && Math.Abs(other.Pop.At - one.Pop.At) > near
                ? MotorUnits.KinOf(one.Near, one.Pop.Height, other.Wide, other.Pop.Height)
                : 0;
            alike += kin > 0 && mayBeKin ? 1 : 0;
            family += kin > 0 ? 1 : 0;
            fellows += kin > 0 ? other.Alike : 0;
            turned += kin < 0 ? 1 : 0;
        }

        return alike >= LeastAlike && 2 * alike >= family && MostTurned * turned <= alike && fellows >= family;
    }
}
