namespace Foreshore.Guide.Itineraries;

/// <summary>
/// What of a way lies between the stance and its parts, by domain.md 5.10: measured whole, or car park to route, walking legs,
/// route's end to stance; never under the stance's own figure.
/// </summary>
internal sealed class Walks
{
    private readonly FlatWay way;
    private readonly double[] scaled;
    private readonly double lotWalk, end;

    private Walks(FlatWay way, double whole)
    {
        this.way = way;
        var legs = way.Legs.Select(leg => leg.Means == Means.Walk ? leg.Minutes ?? 0 : 0).ToArray();
        var parts = (way.LotWalk ?? 0) + legs.Sum() + (way.End ?? 0);
        // Timed whole it is shorter than its parts: each takes its share. Longer: nobody has said over what ground the rest goes.
        var scale = parts > whole ? whole / parts : 1;
        scaled = [.. legs.Select(minutes => minutes * scale)];
        (lotWalk, end) = ((way.LotWalk ?? 0) * scale, (way.End ?? 0) * scale + Math.Max(0, whole - parts));
        Whole = whole;
    }

    public double Whole { get; }

    public static Walks? Out(FlatStance stance, FlatWay way) => Of(way, way.WholeOut, stance.WalkOut);

    public static Walks? In(FlatStance stance, FlatWay way) => Of(way, way.WholeIn, stance.WalkIn);

    private static Walks? Of(FlatWay way, double? measured, double? stance)
    {
        // Where nobody has timed the first way apart, the stance's own walk was timed along it.
        measured ??= way is { IsFirst: true, IsOwn: false } ? stance : null;
        var isTimed = (way.Lot is null || way.LotWalk is not null) && way.Legs.All(leg => leg.Means != Means.Walk || leg.Minutes is not null) && way.End is not null;
        var whole = measured is { } timed
            ? way.LotWalk == way.FirstLotWalk ? timed : timed + way.LotWalk - way.FirstLotWalk
            : isTimed ? (way.LotWalk ?? 0) + way.Legs.Where(leg => leg.Means == Means.Walk).Sum(leg => leg.Minutes!.Value) + way.End : null;
        return whole is { } minutes ? new Walks(way, Math.Max(minutes, stance ?? 0)) : null;
    }

    /// <summary>From the stance through a leg; with −1 through them all and to the car park.</summary>
    public IReadOnlyList<Piece> Through(int leg)
    {
        var found = new List<Piece> { new(end) };
        for (var i = way.Legs.Count - 1; i >= Math.Max(leg, 0); i--)
        {
            if (way.Legs[i].Means == Means.Walk) found.Add(new(scaled[i], way.Legs[i].Ground));
            if (way.Legs[i].Means == Means.Other || (way.Legs[i].Means == Means.Drive && leg >= 0)) found.Add(new(way.Legs[i].Minutes ?? 0, 1, IsRide: true));
        }

        if (leg < 0) found.Add(new(lotWalk));
        return found;
    }

    /// <summary>A walk that was timed to beyond a leg, over the ground of that leg and those between.</summary>
    public IReadOnlyList<Piece> Share(double minutes, int leg)
    {
        var legs = Enumerable.Range(leg, way.Legs.Count - leg).Where(i => way.Legs[i].Means == Means.Walk).ToList();
        var sum = legs.Sum(i => way.Legs[i].Minutes ?? 0);
        return sum > 0 ? [.. legs.Select(i => new Piece(minutes * (way.Legs[i].Minutes ?? 0) / sum, way.Legs[i].Ground))] : [new(minutes, way.Legs[leg].Ground)];
    }

    /// <summary>From the landing stage through a leg on the home side.</summary>
    public IReadOnlyList<Piece> Between(int leg, int ferry) => [.. Enumerable.Range(leg, ferry - leg).Where(i => way.Legs[i].Means == Means.Walk).Select(i => new Piece(scaled[i], way.Legs[i].Ground))];

    /// <summary>From the landing stage to the car park.</summary>
    public IReadOnlyList<Piece> Before(int ferry) =>
    [
        .. Enumerable.Range(0, ferry).Where(i => way.Legs[i].Means is Means.Walk or Means.Other)
            .Select(i => way.Legs[i].Means == Means.Walk ? new Piece(scaled[i], way.Legs[i].Ground) : new Piece(way.Legs[i].Minutes ?? 0, 1, IsRide: true)),
        new Piece(lotWalk),
    ];

    /// <summary>From the stance to the landing stage.</summary>
    public IReadOnlyList<Piece> After(int ferry) => ferry + 1 < way.Legs.Count ? Through(ferry + 1) : [new Piece(end)];

    /// <summary>That of the last leg on foot.</summary>
    public double GroundAtStance => way.Legs.LastOrDefault(leg => leg.Means == Means.Walk)?.Ground ?? 1;
}
