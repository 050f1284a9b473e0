namespace Foreshore.Guide.Itineraries;

/// <summary>All that bounds a stay by one way, by domain.md 5.2, 5.3 and 5.10.</summary>
internal sealed record OwnGates(IReadOnlyList<Gate> Gates, IReadOnlyList<Span> Unknown, IReadOnlyList<string> NotJudged)
{
    /// <summary>A judgement of the club's, no source.</summary>
    private const double Allowance = 0.3, Reserve = 15, LeastAtCrossing = 1.5;

    /// <param name="plainly">
    /// The site's own simplifications, each to the careful side: the whole walk counts to and from every gate and boat, and out to a crossing that nobody has timed; ground
    /// of several legs is averaged by minutes, and where nothing is to be walked to beyond reach of water that cuts the path off, the
    /// whole walk out counts.
    /// </param>
    public static OwnGates Of(FlatStance stance, FlatWay way, Pace pace, bool plainly = false)
    {
        var series = pace.Series;
        List<Gate> all = [];
        var gates = all;
        List<Span> unknown = [];
        List<string> open = [];
        if (Walks.In(stance, way) is not { } walkIn || Walks.Out(stance, way) is not { } walkOut)
            return new([], [], ["a walk is missing"]);

        var (wholeIn, wholeOut) = (Mean(walkIn.Through(-1)), Mean(walkOut.Through(-1)));
        IReadOnlyList<Piece> offTheLedge = stance.Beyond is { } beyond && !(plainly && beyond == 0 && stance.CutMetres is not null) ? [new(beyond, walkOut.GroundAtStance)] : wholeOut;

        void Hours(string name, IReadOnlyList<Rule>? rules, IReadOnlyList<Permit> permits, IReadOnlyList<Piece> piecesIn, IReadOnlyList<Piece> piecesOut)
        {
            if (rules is null) return;
            var (spans, asked) = OwnHours.Over(series, rules, permits);
            gates.Add(new(name, OwnHours.Joined([.. spans, .. asked]), plainly ? [.. wholeIn, .. piecesIn.Where(piece => piece.IsRide)] : piecesIn, plainly ? [.. wholeOut, .. piecesOut.Where(piece => piece.IsRide)] : piecesOut));
            unknown.AddRange(asked);
        }

        void Tide(string name, double metres, IReadOnlyList<Piece> piecesOut, double least, bool isLedge)
        {
            if (double.IsNaN(metres) || series.Tide is null) open.Add($"{name} needs checking");
            else gates.Add(new(name, series.TideBelow(metres - Allowance), wholeIn, piecesOut, Reserve, least) { IsLedge = isLedge });
        }

        void Closed(string name, IReadOnlyList<Shut> closures)
        {
            if (closures.Count > 0) gates.Add(new($"closure of {name}", OwnHours.OpenDates(series, closures), wholeIn, wholeOut));
        }

        Closed("the stance", stance.Shut);
        if (stance.PlaceHoursMissing) open.Add("the place's hours are to be entered");
        Hours("hours of the place", stance.PlaceHours, stance.Permits, wholeIn, wholeOut);
        var boat = way.Legs.ToList().FindIndex(leg => leg.Means == Means.Ferry);
        List<Gate> ashore = [];
        for (var i = 0; i < way.Legs.Count; i++)
        {
            var leg = way.Legs[i];
            if (i < boat) gates = ashore;
            if (i == boat) gates = all;
            if (leg.HoursMissing) open.Add($"hours of {leg.Name} are to be entered");
            if (leg.CutUnknown) open.Add($"nobody knows whether the tide cuts off {leg.Name}");
            Hours($"hours of {leg.Name}", leg.Hours, leg.Permits, i < boat ? walkIn.Between(i, boat) : walkIn.Through(i), i < boat ? walkOut.Between(i, boat) : walkOut.Through(i));
            Closed(leg.Name, leg.Shut);
            if (leg.CutMetres is { } cut)
                Tide($"crossing of {leg.Name}", cut, leg.CutMinutes is { } minutes ? walkOut.Share(minutes, i) : plainly ? wholeOut : i < boat ? walkOut.Between(i, boat) : walkOut.Through(i), LeastAtCrossing, isLedge: false);
        }

        if (way.Lot is { } left)
        {
            gates = all;
            Closed(left.Name, left.Shut);
            if (left.FloodMetres is { } flood)
            {
                if (double.IsNaN(flood) || series.Tide is null) open.Add($"whether {left.Name} floods needs checking");
                else (boat < 0 ? all : ashore).Add(new($"flood at {left.Name}", series.TideBelow(flood - Allowance), boat < 0 ? wholeIn : walkIn.Before(boat), boat < 0 ? wholeOut : walkOut.Before(boat)));
            }
        }

        gates = boat < 0 ? all : ashore;
        if (way.Lot is { } lot) Hours($"hours of {lot.Name}", lot.Hours, stance.Permits, boat < 0 ? wholeIn : walkIn.Before(boat), boat < 0 ? wholeOut : walkOut.Before(boat));
        gates = all;
        if (boat >= 0) gates.Add(Boats.Of(way.Legs[boat], ashore, way.Lot?.Name ?? "", unknown, pace, plainly ? wholeIn : walkIn.After(boat), plainly ? wholeOut : walkOut.After(boat)));
        if (stance.CutMetres is { } path) Tide("the stance's cut-off", path, stance.Beyond is > 0 ? offTheLedge : wholeOut, LeastAtCrossing, isLedge: false);
        if (stance.LimitMetres is { } limit)
            Tide("the ledge", stance.GroundLowerMetres is { } ground ? Math.Min(limit, ground) : limit, offTheLedge, 1, isLedge: true);
        if (!(stance.WalkedInTheDark && way.Legs.All(leg => leg.KnownInTheDark || leg.Means is Means.Ferry or Means.Drive)))
            gates.Add(new("daylight", series.SunAbove(-6), wholeIn, wholeOut));
        if (!stance.IsDry && (stance.LimitMetres is null || (stance.CutMetres is null && !stance.NeverCut))) open.Add("tide limit or cut-off is not recorded");
        return new(all, OwnHours.Joined(unknown), open);

        IReadOnlyList<Piece> Mean(IReadOnlyList<Piece> pieces)
        {
            var walked = pieces.Where(piece => !piece.IsRide).ToList();
            var minutes = walked.Sum(piece => piece.Minutes);
            return !plainly || minutes <= 0 ? pieces : [new(minutes, walked.Sum(piece => piece.Minutes * piece.Ground) / minutes), .. pieces.Where(piece => piece.IsRide)];
        }
    }
}
