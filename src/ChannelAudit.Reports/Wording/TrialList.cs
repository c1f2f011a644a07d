using System.Text;

namespace ChannelAudit.Reports.Wording;

/// <summary>Trial numbers as people write them: <c>3 to 7, 12, 14</c>.</summary>
public static class TrialList
{
    /// <summary>The list; runs of three and more are drawn together.</summary>
    /// <param name="numbers">Trial numbers, ascending.</param>
    public static string Of(IReadOnlyList<int> numbers)
    {
        StringBuilder text = new();
        for (int first = 0; first < numbers.Count;)
        {
            int last = first;
            while (last + 1 < numbers.Count && numbers[last + 1] == numbers[last] + 1)
            {
                last++;
            }

            // Two in a row read better as two numbers.
            last = last - first < 2 ? first : last;
            text.Append(text.Length > 0 ? ", " : string.Empty).Append(numbers[first].Plain());
            if (last > first)
            {
                text.Append(" to ").Append(numbers[last].Plain());
            }

            first = last + 1;
        }

        return text.ToString();
    }
}
