using System.Globalization;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Text;
using Microsoft.AspNetCore.Http;

namespace ChannelAudit.Review;

/// <summary>Answers requests that only read.</summary>
internal sealed class Reading(ReviewBook book, CellDesk cells, CellPictures pictures) : IDisposable
{
    private const long MostPictureBytes = 16L << 20;
    private const int DrawnAtOnce = 2;
    private const double MostSeconds = 1e8;

    private readonly PictureStore _store = new(MostPictureBytes);
    private readonly SemaphoreSlim _drawing = new(DrawnAtOnce);

    /// <summary>Answers <c>/state</c>: what is left to do; the ledger is looked at each time.</summary>
    public Task State(HttpContext context)
    {
        book.Follow();
        return Answer.Json(context, ReviewState.Of(book));
    }

    /// <summary>Answers <c>/cell?n=1</c>.</summary>
    public Task Cell(HttpContext context)
    {
        book.Follow();
        return Answer.Json(context, cells.Of(Number(context)));
    }

    /// <summary>Answers <c>/ribbon?n=1</c>: the recording of a cell.</summary>
    public Task Ribbon(HttpContext context) => IsInList(Number(context)) && RibbonDesk.Of(book, Number(context)) is { } ribbon
        ? Answer.Json(context, ribbon)
        : NotFound(context);

    /// <summary>Answers <c>/picture?n=1&amp;from=0&amp;to=4&amp;w=900&amp;h=480&amp;x=1&amp;look=light&amp;behind=1</c>.</summary>
    public async Task Picture(HttpContext context)
    {
        int number = Number(context);
        if (!IsInList(number) || book.Options.DataRoot is null || Value(context, "from") is not { } from || Value(context, "to") is not { } to)
        {
            await NotFound(context);
            return;
        }

        CellLook look = new CellLook(
            (int)(Value(context, "w") ?? 0), (int)(Value(context, "h") ?? 0), (int)(Value(context, "x") ?? 1), context.Request.Query["look"].ToString() is "dark", context.Request.Query["behind"].ToString() is "1").Clamped();
        string key = FormattableString.Invariant($"{number} {from} {to} {look}");
        await _drawing.WaitAsync(context.RequestAborted);
        byte[] png;
        try
        {
            png = _store.Get(key, () => pictures.Render(number, from, to, look, context.RequestAborted));
        }
        finally
        {
            _drawing.Release();
        }

        await Answer.Bytes(context, png, "image/png");
    }

    /// <summary>Answers <c>/sheet?n=1</c>: the picture that the audit holds of the channel.</summary>
    public Task Sheet(HttpContext context) => IsInList(Number(context)) && pictures.SheetOf(Number(context)) is { } path
        ? Answer.Bytes(context, PlainFile.ReadAllBytes(path), "image/png")
        : NotFound(context);

    /// <summary>Says that there is no such thing.</summary>
    public static Task NotFound(HttpContext context) =>
        Answer.Fault(context, StatusCodes.Status404NotFound, "there is nothing here", "use the address that the terminal shows");

    /// <inheritdoc/>
    public void Dispose() => _drawing.Dispose();

    private bool IsInList(int number) => number >= 1 && number <= book.Cells.Length;

    private static int Number(HttpContext context) =>
        int.TryParse(context.Request.Query["n"], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : 0;

    private static double? Value(HttpContext context, string name) =>
        double.TryParse(context.Request.Query[name], NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && Math.Abs(value) < MostSeconds ? value : null;
}
