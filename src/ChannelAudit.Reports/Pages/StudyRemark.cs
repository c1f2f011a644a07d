namespace ChannelAudit.Reports.Pages;

/// <summary>Something that shows only across the recordings of a study, such as one that differs from all others; it changes no verdict.</summary>
/// <param name="RecordingId">The recording that it is about.</param>
/// <param name="Channel">The place of its channel, from 0 in file order; null when it is about the recording.</param>
/// <param name="Text">What stands out, in a sentence.</param>
public sealed record StudyRemark(string RecordingId, int? Channel, string Text);
