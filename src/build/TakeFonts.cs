using System;
using System.Collections.Generic;
using System.IO;
using System.Reflection;
using Microsoft.Build.Framework;
using Microsoft.Build.Utilities;

/// <summary>Copies named files out of the resource blob of an assembly; runs during the build, see Fonts.targets.</summary>
/// <remarks>
/// The blob: int32 length of the index; the index (int32 version 2, int32 count, then path, int32 offset, int32 size for each);
/// then the files, offsets counting from the end of the index. Little endian, paths with a length prefix.
/// </remarks>
public sealed class TakeFonts : Task
{
    private const string Blob = "!AvaloniaResources";

    [Required]
    public string From { get; set; }

    [Required]
    public string[] Names { get; set; }

    [Required]
    public string To { get; set; }

    public override bool Execute()
    {
        var blob = ReadBlob();
        if (blob == null)
        {
            Log.LogError("{0} has no resource {1}", Path.GetFileName(From), Blob);
            return false;
        }

        Directory.CreateDirectory(To);
        var index = ReadIndex(blob);
        foreach (string name in Names)
        {
            KeyValuePair<int, int> place;
            if (!index.TryGetValue(name, out place) || !IsTrueType(blob, place.Key, place.Value))
            {
                Log.LogError("{0} holds no TrueType file {1}", Path.GetFileName(From), name);
                return false;
            }

            byte[] font = new byte[place.Value];
            Array.Copy(blob, place.Key, font, 0, font.Length);
            File.WriteAllBytes(Path.Combine(To, name), font);
        }

        return true;
    }

    // From bytes, so that the file is not locked while the build server lives.
    private byte[] ReadBlob()
    {
        using (var stream = Assembly.Load(File.ReadAllBytes(From)).GetManifestResourceStream(Blob))
        {
            if (stream == null)
            {
                return null;
            }

            var copy = new MemoryStream();
            stream.CopyTo(copy);
            return copy.ToArray();
        }
    }

    private static Dictionary<string, KeyValuePair<int, int>> ReadIndex(byte[] blob)
    {
        var index = new Dictionary<string, KeyValuePair<int, int>>(StringComparer.Ordinal);
        using (var reader = new BinaryReader(new MemoryStream(blob)))
        {
            int start = reader.ReadInt32() + sizeof(int);
            if (reader.ReadInt32() != 2)
            {
                return index;
            }

            for (int left = reader.ReadInt32(); left > 0; left--)
            {
                string path = reader.ReadString();
                int offset = reader.ReadInt32();
                index[path.Substring(path.LastIndexOf('/') + 1)] = new KeyValuePair<int, int>(start + offset, reader.ReadInt32());
            }
        }

        return index;
    }

    private static bool IsTrueType(byte[] blob, int offset, int size)
    {
        return size > 4 && offset >= 0 && offset + size <= blob.Length
            && blob[offset] == 0 && blob[offset + 1] == 1 && blob[offset + 2] == 0 && blob[offset + 3] == 0;
    }
}
