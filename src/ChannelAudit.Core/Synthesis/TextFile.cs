using System.Globalization;
using System.Text;

namespace ChannelAudit.Synthesis;

/// <summary>Writes a made recording as delimited text: UTF-8, lines ended by LF; samples that are missing are <c>NaN</c>, a gap has no rows.</summary>
public static class TextFile
{
    /// <summary>Writes the file.</summary>
    /// <param name="made">The recording.</param>
    /// <param name="path">Where to; replaced when it exists.</param>
    /// <param name="layout">How; null: tabs, dots and a column of times.</param>
    /// <exception cref="IOException">When it cannot be written.</exception>
    public static void Write(MadeRecording made, string path, TextFileLayout? layout = null)
    {
        ArgumentNullException.ThrowIfNull(made);
        using StreamWriter writer = new(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        Write(made, writer, layout ?? new TextFileLayout());
    }

    private static void Write(MadeRecording made, TextWriter writer, TextFileLayout layout)
    {
        writer.Write(layout.Preamble);
        IEnumerable<string> labels = made.Plan.Sites.Select(site => site.Label);
        writer.Write(string.Join(layout.Separator, layout.HasTime ? labels.Prepend("time") : labels) + "\n");
        if (layout.HasUnitRow)
        {
            IEnumerable<string> units = made.Plan.Sites.Select(_ => "uV");
            writer.Write(string.Join(layout.Separator, layout.HasTime ? units.Prepend("s") : units) + "\n");
        }

        SiteText[] columns = [.. made.Plan.Sites.Select(site => new SiteText(made, site.Name, layout.DecimalSign))];
        StringBuilder row = new();
        for (int i = 0; i < made.Plan.Length; i++)
        {
            if (made.IsInGap(i))
            {
                continue;
            }

            row.Clear();
            if (layout.HasTime)
            {
                string time = made.Plan.Rate.SecondsAt(i).ToString("0.0#####", CultureInfo.InvariantCulture);
                row.Append(time.Replace('.', layout.DecimalSign)).Append(layout.Separator);
            }

            for (int column = 0; column < columns.Length; column++)
            {
                row.Append(column == 0 ? string.Empty : layout.Separator.ToString()).Append(columns[column].At(i));
            }

            writer.Write(row.Append('\n'));
        }
    }
}
