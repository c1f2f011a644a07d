using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Time that was not stored inside a trial, beside a held value and beside a pause between trials.</summary>
internal static class DropoutSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.Dropout,
        Title = "Missing samples",
        Telling = "Where samples are missing nothing is stored, not even a line; and it matters where a trial is.",
        View = GalleryView.Closeup,
        Fault = new()
        {
            Name = "The recorder lost 0.5 s inside a trial",
            Fault = ReasonCode.Dropout,
            Plan = GallerySession.OfCheek(5401, [new RecordingGap { Span = new FaultSpan(15, 15.5M) }], answerUv: 6),
            Excerpts = [new(13.5, 17.5, "trial"), new(14.9, 15.6, "enlarged")],
            ByEye = "Thin upright lines instead of the trace, inside the trial.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "The same 0.5 s stored as a held value",
                Fault = ReasonCode.Flatline,
                Plan = GallerySession.OfCheek(5401, [new Flatline(GallerySession.Cheek) { Span = new FaultSpan(15, 15.5M) }], answerUv: 6),
                Excerpts = [new(13.5, 17.5, "trial"), new(14.9, 15.6, "enlarged")],
                ByEye = "There is a line, and it is straight: stored, but no signal.",
            },
            new()
            {
                Name = "A pause of 0.5 s between two trials",
                Fault = null,
                Plan = GallerySession.OfCheek(5401, [new RecordingGap { Span = new FaultSpan(17.2M, 17.7M) }], answerUv: 6),
                Excerpts = [new(14.5, 18.5, "trial and pause"), new(16.7, 17.9, "enlarged")],
                ByEye = "The same upright lines, but behind the end of the trial, where nothing is scored.",
            },
        ],
    };
}
