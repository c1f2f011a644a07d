using System.Text;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Text;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>A text export written to a folder of its own, opened, and removed afterwards.</summary>
internal sealed class TextCase : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("channelaudit-test-");

    private TextCase(string text, ReadOptions? options, Encoding? encoding)
    {
        Path = System.IO.Path.Combine(_folder.FullName, "rec.csv");
        File.WriteAllText(Path, text, encoding ?? new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        try
        {
            Recording = DelimitedText.Open(Path, options ?? new ReadOptions());
        }
        catch
        {
            _folder.Delete(recursive: true);
            throw;
        }
    }

    public string Path { get; }

    public Recording Recording { get; }

    public static TextCase Open(string text, ReadOptions? options = null, Encoding? encoding = null) => new(text, options, encoding);

    /// <summary>The fault as the user sees it: message, a bar, hint.</summary>
    public static string Fault(string text, ReadOptions? options = null, Encoding? encoding = null)
    {
        try
        {
            using TextCase opened = new(text, options, encoding);
            return "opened";
        }
        catch (ChannelAuditException fault)
        {
            return $"{fault.Message} | {fault.Hint}";
        }
    }

    public double[] Samples(string label)
    {
        Channel channel = Recording.Channels.Single(one => string.Equals(one.Label, label, StringComparison.Ordinal));
        double[] values = new double[channel.StoredLength];
        Recording.Samples.Read(channel.Index, 0, values);
        return values;
    }

    public string[] Warnings() => [.. Recording.Warnings.Select(warning => $"{warning.Place}: {warning.Message}")];

    /// <summary>Rows made by a function of the row number, one a line.</summary>
    public static string Rows(int count, Func<int, string> row, string newLine = "\n") =>
        string.Concat(Enumerable.Range(0, count).Select(i => row(i) + newLine));

    public void Dispose()
    {
        Recording.Dispose();
        _folder.Delete(recursive: true);
    }
}
