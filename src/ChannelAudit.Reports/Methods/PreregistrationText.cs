using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Methods;

/// <summary>What a preregistration has to say of limits that were frozen, with the numbers filled in, as Markdown.</summary>
public static class PreregistrationText
{
    /// <summary>The text.</summary>
    /// <param name="criteria">The limits.</param>
    /// <param name="file">The name of the frozen file.</param>
    /// <param name="date">The day as <c>yyyy-MM-dd</c>.</param>
    /// <param name="version">The version of the program.</param>
    public static string Render(AuditCriteria criteria, string file, string date, string version)
    {
        ArgumentNullException.ThrowIfNull(criteria);
        StringBuilder text = new();
        text.Append("# Signal quality: limits fixed in advance\n\n")
            .AppendJoin(
                ' ',
                $"Recordings will be screened with ChannelAudit {MarkdownText.Escape(version)}.",
                $"The limits below were frozen on {date} in the file {MarkdownText.Escape(file)}; their SHA-256 is `{criteria.Sha256}`.",
                "[Say here whether data had been recorded, or looked at, by that day.]",
                "A fixed policy turns measures and limits into one verdict (pass, questionable or reject) for each channel and for each trial of each channel,",
                "without looking at condition labels.",
                "Trials and channels with the verdict reject will be excluded from scoring;",
                "[say here what will be done with questionable ones, and who may decide otherwise, on what grounds].",
                "A measure that cannot be taken reaches no limit and will be reported as not assessed.",
                "We will report whether the limits were used unchanged, and any difference with its reason.")
            .Append("\n\nA limit counts as reached at its own value; \"and\": all are needed, \"or\": one is enough.\n\n");
        foreach (Criterion criterion in criteria.All)
        {
            text.Append("- **").Append(MarkdownText.Escape(ReasonWords.For(criterion.Reason).Name)).Append("** (`").Append(criterion.Reason).Append("`). Questionable: ")
                .Append(LimitWords.Questionable(criterion, LimitWords.Off)).Append(". Reject: ")
                .Append(LimitWords.Reject(criterion, LimitWords.Off)).Append(". Source: ")
                .Append(MarkdownText.Escape(criterion.Source)).Append(".\n");
        }

        return text.ToString();
    }
}
