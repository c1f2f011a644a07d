using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Typed;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Typed;

/// <summary>What a Parquet file in the making holds; counted for the whole process, so that no other test may run beside it.</summary>
[Collection(Alone.Name)]
public sealed class ParquetMemoryTests
{
    // 16 row groups and 77 of them: what is held while the file is open must not follow the rows.
    [Fact]
    public void MemoryDoesNotGrowWithTheRows()
    {
        const int Million = 1_000_000;
        string path = Path.GetTempFileName();
        try
        {
            using FileStream stream = new(path, FileMode.Create);
            using ParquetTable table = new(TypedColumns.Measures, new ParquetLabel("measures", "0.1.0", SampleResults.CriteriaSha256), stream);
            AddRows(table, 0, Million);
            long one = GC.GetTotalMemory(forceFullCollection: true);
            AddRows(table, Million, 5 * Million);
            long five = GC.GetTotalMemory(forceFullCollection: true);
            table.End();

            Assert.InRange(five - one, long.MinValue, 2 << 20);
            Assert.True(stream.Length > 50 * Million, $"{stream.Length} bytes");
        }
        finally
        {
            File.Delete(path);
        }

        static void AddRows(ParquetTable table, int from, int to)
        {
            for (int row = from; row < to; row++)
            {
                table.Label(FormattableString.Invariant($"session{row / 75_000}"));
                table.Label("cheek");
                table.Count(row / 50 % 360, string.Empty);
                table.Word("line_rms");
                table.Number(row * 0.1);
                table.Word("uV");
                table.Grade(Grade.Pass);
                table.Number(1);
                table.Number(5);
                table.Label(null);
                table.EndRow();
            }
        }
    }
}
