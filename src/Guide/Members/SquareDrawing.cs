using System.Globalization;
using System.Text;
using QRCoder;

namespace Foreshore.Guide.Members;

/// <summary>A QR code (ISO/IEC 18004) in units of its own squares, with the four empty ones all round that readers need.</summary>
public sealed record SquareDrawing(int Side, string Path)
{
    public static SquareDrawing Of(string text)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        // The library's squares have their empty rim already.
        var rows = code.ModuleMatrix;
        var path = new StringBuilder();
        for (var y = 0; y < rows.Count; y++)
        {
            for (var x = 0; x < rows.Count; x++)
            {
                if (!rows[y][x])
                    continue;

                // One stroke for squares side by side: a third of the length.
                var from = x;
                while (x + 1 < rows.Count && rows[y][x + 1])
                    x++;
                path.Append(CultureInfo.InvariantCulture, $"M{from} {y}h{x - from + 1}v1H{from}z");
            }
        }

        return new(rows.Count, path.ToString());
    }
}
