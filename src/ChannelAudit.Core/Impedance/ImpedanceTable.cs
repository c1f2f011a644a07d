using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Impedance;

/// <summary>Reads a table of readings, line by line.</summary>
internal sealed class ImpedanceTable
{
    private static readonly string[] OhmNames = ["ohm", "ohms", "Ω", "Ohm", "R_ohm"];

    private readonly SmallTable _table;
    private readonly StudySetup _setup;
    private readonly ImmutableArray<string> _sites;
    private readonly ContactPairText _pairs;
    private readonly ImmutableArray<Warning>.Builder _warnings = ImmutableArray.CreateBuilder<Warning>();

    private ImpedanceTable(SmallTable table, StudySetup setup)
    {
        _table = table;
        _setup = setup;
        int site = table.IndexOf("site");
        _sites = setup.Sites.IsEmpty
            ? [.. table.Rows.Select(row => SmallTable.Cell(row, site)).OfType<string>().Distinct(StringComparer.Ordinal)]
            : [.. setup.Sites.Select(known => known.Name)];
        _pairs = new ContactPairText(_sites, setup);
    }

    /// <summary>See <see cref="ImpedanceLog.Read"/>.</summary>
    public static ImpedanceLog Read(string path, StudySetup setup)
    {
        SmallTable table = SmallTable.Read(path, ImpedanceErrors.Kind);
        RefuseWithout(table, ["site", "pair", "kohm"]);
        ImpedanceTable reader = new(table, setup);
        ImmutableArray<LoggedReading> readings = reader.InOrder([.. table.Rows.Select(reader.Line).OfType<LoggedReading>()]);
        if (readings.IsEmpty)
        {
            throw ImpedanceErrors.NoReadings(table.File);
        }

        return new ImpedanceLog
        {
            FileName = table.File,
            Sha256 = Convert.ToHexStringLower(SHA256.HashData(PlainFile.ReadAllBytes(path))),
            Readings = readings,
            Warnings = reader._warnings.ToImmutable(),
        };
    }

    private static void RefuseWithout(SmallTable table, ReadOnlySpan<string> needed)
    {
        foreach (string column in needed)
        {
            if (table.OnlyIndexOf(column) >= 0)
            {
                continue;
            }

            bool isKohm = string.Equals(column, "kohm", StringComparison.Ordinal);
            throw isKohm && table.Columns.FirstOrDefault(name => OhmNames.Contains(name, StringComparer.Ordinal)) is { } ohm
                ? ImpedanceErrors.OhmColumn(table.File, ohm)
                : ImpedanceErrors.NoColumn(table.File, column, table.Columns);
        }
    }

    private LoggedReading? Line(SmallTableRow row)
    {
        string site = Needed(row, "site");
        (SiteElectrode from, SiteElectrode to) = Ends(row, site);
        if (Kohm(row) is not { } kohm)
        {
            _warnings.Add(new Warning(_table.File, Place(row.Line), "no value: this reading counts as not taken"));
            return null;
        }

        string? recording = _table.OnlyIndexOf("recording") < 0 ? null : Needed(row, "recording");
        return new LoggedReading(row.Line, from, to, kohm, Time(row), Cell(row, "phase"), recording);
    }

    private (SiteElectrode From, SiteElectrode To) Ends(SmallTableRow row, string site)
    {
        if (string.Equals(site, SiteSetup.Ground, StringComparison.OrdinalIgnoreCase))
        {
            throw ImpedanceErrors.GroundIsNoSite(_table.File, row.Line);
        }

        if (!_sites.Contains(site, StringComparer.Ordinal))
        {
            throw ImpedanceErrors.UnknownSite(_table.File, row.Line, site, _sites, SetupName);
        }

        string text = Needed(row, "pair");
        if (_pairs.Read(text, site) is not { } ends)
        {
            throw _pairs.UnknownSite(text) is { } unknown
                ? ImpedanceErrors.UnknownSite(_table.File, row.Line, unknown, _sites, SetupName)
                : ImpedanceErrors.NotAPair(_table.File, row.Line, text);
        }

        if (ends.From == ends.To)
        {
            throw ImpedanceErrors.SameContact(_table.File, row.Line, text);
        }

        return new[] { ends.From.Site, ends.To.Site }.Contains(site, StringComparer.Ordinal)
            ? ends
            : throw ImpedanceErrors.OtherSite(_table.File, row.Line, text, site);
    }

    private double? Kohm(SmallTableRow row)
    {
        if (Cell(row, "kohm") is not { } text)
        {
            return null;
        }

        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double kohm) || !double.IsFinite(kohm))
        {
            throw ImpedanceErrors.NotANumber(_table.File, row.Line, text);
        }

        return kohm < 0 ? throw ImpedanceErrors.Negative(_table.File, row.Line, text)
            : kohm >= ImpedanceLimits.ImplausibleKohm ? throw ImpedanceErrors.Implausible(_table.File, row.Line, kohm)
            : Math.Abs(kohm);
    }

    private ReadingTime? Time(SmallTableRow row) => Cell(row, "time") is not { } text ? null
        : ReadingTime.TryParse(text, out ReadingTime time) ? time
        : throw ImpedanceErrors.NotATime(_table.File, row.Line, text);

    private ImmutableArray<LoggedReading> InOrder(ImmutableArray<LoggedReading> readings)
    {
        ImmutableArray<LoggedReading> timed = [.. readings.Where(reading => reading.Time is not null)];
        if (timed.FirstOrDefault(reading => reading.Time!.Value.HasDate != timed[0].Time!.Value.HasDate) is { } other)
        {
            throw ImpedanceErrors.DateInSome(_table.File, other.Line, other.Time!.Value.HasDate);
        }

        if (timed.Length < readings.Length)
        {
            if (!timed.IsEmpty)
            {
                LoggedReading without = readings.First(reading => reading.Time is null);
                _warnings.Add(new Warning(_table.File, Place(without.Line), "no time, though other lines have one: the order of the lines counts instead"));
            }

            return readings;
        }

        return [.. Once(readings).OrderBy(reading => reading.Time!.Value.At)];
    }

    // With a time, a line that stands there word for word again is the same reading; without one it may be a second reading.
    private IEnumerable<LoggedReading> Once(ImmutableArray<LoggedReading> readings)
    {
        HashSet<LoggedReading> seen = [];
        foreach (LoggedReading reading in readings)
        {
            if (seen.Add(reading with { Line = 0 }))
            {
                yield return reading;
            }
            else
            {
                _warnings.Add(new Warning(_table.File, Place(reading.Line), "the same reading as in a line above: counted once"));
            }
        }
    }

    private string? SetupName => _setup.Sites.IsEmpty ? null : _setup.FileName ?? "the setup";

    private string Needed(SmallTableRow row, string column) => Cell(row, column) ?? throw ImpedanceErrors.Missing(_table.File, row.Line, column);

    private string? Cell(SmallTableRow row, string column) => SmallTable.Cell(row, _table.OnlyIndexOf(column));

    private static string Place(int line) => "line " + line.ToString(CultureInfo.InvariantCulture);
}
