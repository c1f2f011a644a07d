using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>What the label of a signal says about it.</summary>
internal static class SignalLabel
{
    private static readonly ImmutableArray<string> StatusWords =
        ["status", "trigger", "triggers", "trig", "marker", "markers", "event", "events", "ttl", "stim", "sti", "annotation", "annotations"];

    /// <summary>Whether the signal holds annotations: both labels occur in both widths.</summary>
    public static bool IsAnnotations(string label) =>
        label.Equals("EDF Annotations", StringComparison.OrdinalIgnoreCase) || label.Equals("BDF Annotations", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a whole word of the label (a run of letters) says status, trigger, marker or event.</summary>
    public static bool IsStatus(string label)
    {
        int start = 0;
        for (int i = 0; i <= label.Length; i++)
        {
            if (i < label.Length && char.IsLetter(label[i]))
            {
                continue;
            }

            if (StatusWords.Contains(label[start..i], StringComparer.OrdinalIgnoreCase))
            {
                return true;
            }

            start = i + 1;
        }

        return false;
    }

    /// <summary>Makes labels unique: the second <c>EMG</c> is <c>EMG#2</c>; a blank one is called by its place, <c>channel 3</c>.</summary>
    public static ImmutableArray<string> MakeUnique(IEnumerable<string> labels)
    {
        ImmutableArray<string> raw = [.. labels.Select((label, i) => label.Length > 0 ? label : Numbered("channel ", i + 1))];
        HashSet<string> inFile = new(raw, StringComparer.Ordinal);
        HashSet<string> used = new(StringComparer.Ordinal);
        ImmutableArray<string>.Builder unique = ImmutableArray.CreateBuilder<string>(raw.Length);
        foreach (string label in raw)
        {
            string name = label;
            if (!used.Add(name))
            {
                // A name that another signal really has is left to it.
                for (int n = 2; inFile.Contains(name) || !used.Add(name); n++)
                {
                    name = Numbered(label + "#", n);
                }
            }

            unique.Add(name);
        }

        return unique.ToImmutable();
    }

    private static string Numbered(string stem, int number) => stem + number.ToString(CultureInfo.InvariantCulture);
}
