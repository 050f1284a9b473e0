using System.Text;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Photos;

/// <summary>The verb <c>ingest</c>: one file on the standard input, two pictures on the standard output, or words on the error output.</summary>
internal static class IngestVerb
{
    public const string Name = "ingest";

    /// <summary>The file is not taken, and the words on the error output say why.</summary>
    public const int Refused = 3;

    public static int Run(Stream input, Stream output, Stream errors)
    {
        try
        {
            var room = new byte[Developing.MostBytes + 1];
            var read = input.ReadAtLeast(room, room.Length, throwOnEndOfStream: false);
            Array.Resize(ref room, read);
            ProcessBounds.Set(Developing.MostNative + Developing.MostBytes, Darkroom.MostSeconds);
            var (width, height, full, small) = Developing.Develop(room);
            DevelopedPhoto.Write(output, width, height, full, small);
            return 0;
        }
        catch (NotAcceptedException refused)
        {
            errors.Write(Encoding.UTF8.GetBytes(refused.Message));
            return Refused;
        }
    }
}
