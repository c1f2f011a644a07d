namespace ChannelAudit.Pilot;

/// <summary>Whose recording a pilot is, as far as its name tells: attempts are compared within one participant only.</summary>
internal static class PilotParticipant
{
    private const string Subject = "sub-";
    private static readonly char[] Ends = ['-', '_', '+', '.', ' ', '%'];

    /// <summary>The participant's code.</summary>
    /// <param name="id">
    /// Id of the recording: <c>sub-07</c> of <c>sub-07_task-pilot_emg</c> (the entity of BIDS), else what stands before the first sign that is no letter and
    /// no digit, so that <c>P07</c>, <c>P07-2</c> and <c>P07_again</c> are one participant.
    /// </param>
    public static string Of(string id)
    {
        int from = id.StartsWith(Subject, StringComparison.Ordinal) ? Subject.Length : 0;
        int end = id.IndexOfAny(Ends, from);
        return end <= from ? id : id[..end];
    }
}
