using System.Text;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>Writes one recording of the study, with what went wrong on the way into the file.</summary>
internal static class StudyFile
{
    // The field of the participant in an EDF header (EDF specification).
    private const int PatientAt = 8;
    private const int PatientLength = 80;

    /// <summary>Writes EDF+.</summary>
    /// <param name="made">The recording.</param>
    /// <param name="change">What went wrong.</param>
    /// <param name="path">Where to; replaced when it exists.</param>
    internal static void Write(MadeRecording made, StoredChange change, string path)
    {
        if (change.IsOfContent)
        {
            using Recording recording = made.Open();
            EdfWriter.Write(path, Content(made, recording, change));
        }
        else
        {
            EdfFiles.Write(made, path);
        }

        using FileStream file = new(path, FileMode.Open);
        if (change.Patient is { } patient)
        {
            file.Position = PatientAt;
            file.Write(Encoding.ASCII.GetBytes(patient.PadRight(PatientLength)));
        }

        file.Position = 0;
        file.Write(new byte[change.Zeroed]);
        file.SetLength((long)(change.Kept * file.Length));
    }

    private static EdfContent Content(MadeRecording made, Recording recording, StoredChange change) =>
        new([.. recording.Channels.Select(channel => Signal(recording, channel, change))], (int)made.Plan.DurationS)
        {
            Annotations = EdfFiles.Annotations(made.Plan with { Trials = [.. change.Events?.Invoke(made.Plan.Trials) ?? made.Plan.Trials] }),
        };

    private static EdfSignalContent Signal(Recording recording, Channel channel, StoredChange change)
    {
        EdfSignalContent signal = EdfFiles.Signal(channel, 1, Fill);
        return signal with { PhysicalMin = change.Gain * signal.PhysicalMin, PhysicalMax = change.Gain * signal.PhysicalMax };

        void Fill(long first, Span<double> destination)
        {
            recording.Samples.Read(channel.Index, first, destination);
            foreach (ref double value in destination)
            {
                value = change.Gain * (change.IsRectified ? Math.Abs(value) : value);
            }
        }
    }
}
