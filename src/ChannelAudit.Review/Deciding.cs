using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Verdicts;
using Microsoft.AspNetCore.Http;

namespace ChannelAudit.Review;

/// <summary>Answers requests that change something: decisions, their withdrawal, and on request the tables.</summary>
/// <param name="book">The cells.</param>
/// <param name="desk">Takes decisions.</param>
/// <param name="cells">Knows whether what is shown of a cell can be decided about.</param>
/// <param name="update">Brings tables and pages up to date; says whether anything was written.</param>
internal sealed class Deciding(ReviewBook book, ReviewDesk desk, CellDesk cells, Func<CancellationToken, bool> update)
{
    private static readonly string[] DecisionFields = ["n", "reach", "others", "verdict", "reason", "seen"];
    private static readonly string[] WithdrawalFields = ["number"];

    /// <summary>Answers <c>/decide</c>.</summary>
    public async Task Decide(HttpContext context)
    {
        Dictionary<string, JsonElement>? fields = await PostedFields.Read(context.Request.Body, DecisionFields, context.RequestAborted);
        if (fields is null || RequestOf(fields) is not { } request)
        {
            await NotUnderstood(context);
            return;
        }

        if (request.Number >= 1 && request.Number <= book.Cells.Length)
        {
            await cells.RequireSeen(request.Number, context.RequestAborted);
        }

        try
        {
            ImmutableArray<Decision> lines = desk.Decide(request, CancellationToken.None);
            await Answer.Json(context, new { lines[0].Number, Count = lines.Length, Next = book.NextAfter(request.Number), State = ReviewState.Of(book) });
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

        ImmutableArray<Decision> step = desk.Withdraw(number, CancellationToken.None);
        await Answer.Json(context, new { Count = step.Length, Cell = book.NumberOf(step[0]), State = ReviewState.Of(book) });
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

    private static ReviewRequest? RequestOf(Dictionary<string, JsonElement> fields) =>
        PostedFields.Whole(fields["n"]) is { } number
        && PostedFields.Whole(fields["others"]) is { } others
        && PostedFields.Whole(fields["seen"]) is >= 0 and { } seen
        && PostedFields.Text(fields["reason"]) is { } reason
        && ReachOf(PostedFields.Text(fields["reach"])) is { } reach
        && GradeCode.From(PostedFields.Text(fields["verdict"]) ?? string.Empty) is { } verdict
            ? new ReviewRequest(number, reach, others, verdict, reason, seen)
            : null;

    private static ReviewReach? ReachOf(string? word) => word switch
    {
        "trial" => ReviewReach.Trial,
        "channel" => ReviewReach.Channel,
        "alike" => ReviewReach.Alike,
        _ => null,
    };

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
