using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>
/// A skyline seen from one eye, made ready for many questions: the same numbers as <see cref="Skyline.AltitudeDegreesAt"/>,
/// each with an arc within which the answer stays the same.
/// </summary>
internal sealed class SkylineEdge
{
    private const double Radian = Math.PI / 180;
    // No arc longer than this is promised, so that the altitude's cosine can be bounded along it.
    private const double LongestReach = 0.1;

    // Never nought, which would lose the sign.
    private const double ShortestReach = 1e-12;

    private readonly Piece[] pieces;

    internal SkylineEdge(Observer observer)
    {
        var points = observer.Skyline.Points;
        var dip = observer.DipDegrees;
        pieces = new Piece[points.Count];
        for (var i = 0; i < pieces.Length; i++)
            pieces[i] = new Piece(points[i], points[(i + 1) % pieces.Length], dip);

        LowestDegrees = pieces.Min(piece => Math.Min(piece.StartDegrees, piece.EndDegrees));
        HighestDegrees = pieces.Max(piece => Math.Max(piece.StartDegrees, piece.EndDegrees));
        var land = pieces.Where(piece => piece.IsLand).ToList();
        HasLand = land.Count > 0;
        LowestLandDegrees = HasLand ? land.Min(piece => Math.Min(piece.StartDegrees, piece.EndDegrees)) : 0;
        HighestLandDegrees = HasLand ? land.Max(piece => Math.Max(piece.StartDegrees, piece.EndDegrees)) : 0;
    }

    internal double LowestDegrees { get; }

    internal double HighestDegrees { get; }

    internal bool IsLevel => LowestDegrees == HighestDegrees;

    internal bool HasLand { get; }

    internal double LowestLandDegrees { get; }

    internal double HighestLandDegrees { get; }

    /// <summary>Above zero while something seen at an altitude, degrees, in that azimuth stands over the edge.</summary>
    internal double Above(in Direction body, double seenDegrees)
    {
        if (seenDegrees > HighestDegrees) return (seenDegrees - HighestDegrees) * Radian;
        if (seenDegrees < LowestDegrees) return (seenDegrees - LowestDegrees) * Radian;

        var azimuth = body.AzimuthDegrees;
        ref readonly var piece = ref pieces[PieceAt(azimuth)];
        var over = (seenDegrees - piece.At(azimuth)) * Radian;
        return Math.CopySign(Reach(body, azimuth, piece, Math.Abs(over)), over);
    }

    /// <summary>Above zero while something seen at an altitude stands no further than a width, degrees, from an edge of land.</summary>
    internal double Near(in Direction body, double seenDegrees, double widthDegrees)
    {
        var azimuth = body.AzimuthDegrees;
        ref readonly var piece = ref pieces[PieceAt(azimuth)];
        if (!piece.IsLand) return -Math.Max(ShortestReach, ToBorder(body, azimuth, piece));
        var inside = (widthDegrees - Math.Abs(seenDegrees - piece.At(azimuth))) * Radian;
        return Math.CopySign(Reach(body, azimuth, piece, Math.Abs(inside)), inside);
    }

    /// <summary>Above zero while the edge below a direction is sea.</summary>
    internal double OverSea(in Direction body)
    {
        var azimuth = body.AzimuthDegrees;
        ref readonly var piece = ref pieces[PieceAt(azimuth)];
        var reach = Math.Max(ShortestReach, ToBorder(body, azimuth, piece));
        return piece.IsSea ? reach : -reach;
    }

    private double Reach(in Direction body, double azimuth, in Piece piece, double margin)
    {
        var cosine = Math.Sqrt(Math.Max(0, 1 - body.Up * body.Up));
        // Along an arc the body nears the edge by its own climb and by the edge's slope under its azimuth.
        var rate = 1 + Math.Abs(piece.Slope) / Math.Max(0.02, cosine - LongestReach);
        return Math.Max(ShortestReach, Math.Min(Math.Min(margin / rate, LongestReach), ToBorder(body, azimuth, piece)));
    }

    private double ToBorder(in Direction body, double azimuth, in Piece piece)
    {
        if (pieces.Length == 1) return LongestReach;
        var cosine = Math.Sqrt(Math.Max(0, 1 - body.Up * body.Up));
        var along = piece.Along(azimuth) * Radian;
        // Less than the sine of the angle to the nearer border, and cheaper.
        return 0.95 * cosine * Math.Min(0.5, Math.Min(along, piece.Width * Radian - along));
    }

    private int PieceAt(double azimuthDegrees)
    {
        var (low, high) = (0, pieces.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (pieces[middle].Azimuth <= azimuthDegrees) low = middle + 1;
            else high = middle;
        }

        return low == 0 ? pieces.Length - 1 : low - 1;
    }

    private readonly struct Piece
    {
        internal readonly double Azimuth, Width, StartDegrees, EndDegrees, Slope;
        internal readonly bool IsLand, IsSea;

        internal Piece(SkylinePoint start, SkylinePoint end, double dipDegrees)
        {
            Azimuth = start.AzimuthDegrees;
            Width = end.AzimuthDegrees - start.AzimuthDegrees;
            if (Width <= 0) Width += 360;
            (IsLand, IsSea) = (start.Kind == SkylineKind.Land, start.Kind == SkylineKind.Sea);
            (StartDegrees, EndDegrees) = start.Kind switch
            {
                SkylineKind.Land => (start.AltitudeDegrees, end.AltitudeDegrees),
                SkylineKind.Sea => (-dipDegrees, -dipDegrees),
                _ => (0, 0),
            };
            Slope = (EndDegrees - StartDegrees) / Width;
        }

        internal double Along(double azimuthDegrees) =>
            azimuthDegrees >= Azimuth ? azimuthDegrees - Azimuth : azimuthDegrees + 360 - Azimuth;

        internal double At(double azimuthDegrees) => StartDegrees + Slope * Along(azimuthDegrees);
    }
}
