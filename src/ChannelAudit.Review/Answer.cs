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

    /// <summary>Answers with what is wrong and what to do.</summary>
    public static Task Fault(HttpContext context, int status, string error, string hint) => Json(context, new { error, hint }, status);

    /// <summary>Answers with bytes.</summary>
    public static async Task Bytes(HttpContext context, ReadOnlyMemory<byte> bytes, string type)
    {
        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }
}
