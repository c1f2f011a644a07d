using System.Net;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;

namespace ChannelAudit.Review;

/// <summary>Writes answers; each carries the headers that keep a page to itself.</summary>
internal static class Answer
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

    // The default encoder: no text from a file can become markup, whatever reads the answer.
    private static readonly JsonSerializerOptions Style = new(JsonSerializerDefaults.Web);

    /// <summary>Sets the headers of every answer.</summary>
    public static void Shield(HttpResponse response)
    {
        IHeaderDictionary headers = response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers.CacheControl = "no-store";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers.XFrameOptions = "DENY";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
    }

    /// <summary>Answers with an object as JSON.</summary>
    public static Task Json<T>(HttpContext context, T value, int status = StatusCodes.Status200OK)
    {
        context.Response.StatusCode = status;
        return Bytes(context, JsonSerializer.SerializeToUtf8Bytes(value, Style), "application/json; charset=utf-8");
    }

    /// <summary>Answers with what is wrong and what to do: as a page to whoever opens an address, else as JSON.</summary>
    public static Task Fault(HttpContext context, int status, string error, string hint)
    {
        bool isOpened = HttpMethods.IsGet(context.Request.Method) && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);
        if (!isOpened)
        {
            return Json(context, new { error, hint }, status);
        }

        context.Response.StatusCode = status;
        return Bytes(context, Encoding.UTF8.GetBytes(FaultPage(error, hint)), "text/html; charset=utf-8");
    }

    /// <summary>Answers with bytes.</summary>
    public static async Task Bytes(HttpContext context, ReadOnlyMemory<byte> bytes, string type)
    {
        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }

    private static string FaultPage(string error, string hint) =>
        "<!doctype html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        + "<meta name=\"color-scheme\" content=\"light dark\">\n"
        + $"<title>Review</title>\n<h1>{Sentence(error)}</h1>\n<p>{Sentence(hint)}</p>\n</html>\n";

    private static string Sentence(string words) => WebUtility.HtmlEncode($"{char.ToUpperInvariant(words[0])}{words[1..]}.");
}
