namespace ChannelAudit.Cli.Verifying;

/// <summary>What <c>verify</c> was asked for.</summary>
/// <param name="Folder">The folder of an audit.</param>
/// <param name="Data">Where its recordings are; null: they are not looked at.</param>
/// <param name="WithPictures">Whether pictures are drawn again.</param>
/// <param name="Jobs">Recordings audited at the same time; null: as many as there are processors.</param>
internal sealed record VerifyRequest(string Folder, string? Data, bool WithPictures, int? Jobs);
