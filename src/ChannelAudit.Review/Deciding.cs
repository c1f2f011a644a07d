using System.Text.Json;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Verdicts;
using Microsoft.AspNetCore.Http;

namespace ChannelAudit.Review;

/// <summary>Answers requests that change something: decisions, their withdrawal, and on request the tables.</summary>
/// <param name="book">The cells.</param>
/// <param name="desk">Takes decisions.</param>
/// <param name="shelf">Knows whether a recording is the audited one.</param>
/// <param name="update">Brings tables and pages up to date; says whether anything was written.</param>
internal sealed class Deciding(ReviewBook book, ReviewDesk desk, RecordingShelf shelf, Func<CancellationToken, bool> update)
{
    private static readonly string[] DecisionFields = ["n", "verdict", "reason", "seen"];
    private static readonly string[] WithdrawalFields = ["number"];

    /// <summary>Answers <c>/decide</c>.</summary>
    public async Task Decide(HttpContext context)
    {
        Dictionary<string, JsonElement>? fields = await PostedFields.Read(context.Request.Body, DecisionFields, context.RequestAborted);
        if (fields is null || PostedFields.Whole(fields["n"]) is not { } number || PostedFields.Whole(fields["seen"]) is not { } seen || seen < 0
            || PostedFields.Text(fields["reason"]) is not { } reason
            || GradeCode.From(PostedFields.Text(fields["verdict"]) ?? string.Empty) is not { } verdict)
        {
            await NotUnderstood(context);
            return;
        }

        if (number >= 1 && number <= book.Cells.Length)
        {
            await shelf.RequireAudited(book.Cells[number - 1].Recording, context.RequestAborted);
        }

        try
        {
            Decision line = desk.Decide(number, verdict, reason, seen, CancellationToken.None);
            await Answer.Json(context, new { line.Number, Next = book.NextAfter(number), State = ReviewState.Of(book) });
        }
        catch (DecisionConflictException conflict)
        {
            book.Follow();
            await Answer.Json(context, Told(conflict), StatusCodes.Status409Conflict);
        }
    }

    /// <summary>Answers <c>/withdraw</c>.</summary>
    public async Task Withdraw(HttpContext context)
    {
        Dictionary<string, JsonElement>? fields = await PostedFields.Read(context.Request.Body, WithdrawalFields, context.RequestAborted);
        if (fields is null || PostedFields.Whole(fields["number"]) is not { } number)
        {
            await NotUnderstood(context);
            return;
        }

        Decision line = desk.Withdraw(number, CancellationToken.None);
        await Answer.Json(context, new { line.Number, State = ReviewState.Of(book) });
    }

    /// <summary>Answers <c>/tables</c>.</summary>
    public async Task Tables(HttpContext context)
    {
        if (book.Options.IsReadOnly || await PostedFields.Read(context.Request.Body, [], context.RequestAborted) is null)
        {
            await NotUnderstood(context);
            return;
        }

        bool isWritten = await Task.Run(() => update(CancellationToken.None), context.RequestAborted);
        await Answer.Json(context, new { isWritten });
    }

    private static Task NotUnderstood(HttpContext context) => Answer.Fault(
        context, StatusCodes.Status400BadRequest, "the request was not understood: nothing was decided", "reload the page");

    private static object Told(DecisionConflictException conflict)
    {
        Decision subject = conflict.Withdrawn ?? conflict.Other;
        string verdict = subject.Verdict is { } grade ? GradeCode.Of(grade) : string.Empty;
        return new
        {
            error = conflict.Withdrawn is null
                ? $"{conflict.Other.By} has decided since you looked: {verdict}, {conflict.Other.Reason}"
                : $"{conflict.Other.By} has taken a decision back since you looked: {verdict}, {subject.Reason}",
            hint = "Nothing was written. Decide again to decide all the same.",
            seen = conflict.Seen,
        };
    }
}
