namespace Foreshore.Guide.Itineraries;

/// <summary>
/// From the first landing of a date to the last check-in of that date which still leads through everything on the home side, car
/// park included: the boat after it, or the next day's, is no way back.
/// </summary>
internal static class Boats
{
    /// <param name="ashore">What opens and shuts between the boat and home; walks are from the landing stage.</param>
    /// <param name="lot">The car park: the car comes out in the period in which it went in.</param>
    public static Gate Of(FlatLeg boat, IReadOnlyList<Gate> ashore, string lot, List<Span> unknown, Pace pace, IReadOnlyList<Piece> piecesIn, IReadOnlyList<Piece> piecesOut)
    {
        var series = pace.Series;
        var spans = new List<Span>();
        foreach (var date in series.Dates(1))
        {
            if (OwnHours.On(series, boat.Out!, date) is not { } there || OwnHours.On(series, boat.Back!, date) is not { } back)
            {
                Span day = new(series.MinuteOf(date, 0), series.MinuteOf(date.PlusDays(1), 0));
                unknown.Add(day);
                spans.Add(day);
                continue;
            }

            var landings = there.Select(sailing => (Lot: Parked(sailing - boat.CheckIn), At: sailing + boat.Minutes!.Value)).Where(one => one.Lot is not null).GroupBy(one => one.Lot);
            foreach (var parked in landings)
            {
                var first = parked.Min(one => one.At);
                var last = back.Where(sailing => sailing > first && Home(sailing + boat.Minutes!.Value) == parked.Key).Select(sailing => sailing - boat.CheckIn).DefaultIfEmpty(double.NaN).Last();
                if (last > first) spans.Add(new(first, last));
            }
        }

        return new($"boat of {boat.Name}", [.. spans.OrderBy(span => span.From)], piecesIn, piecesOut);

        // Which opening of the car park lets one get to the boat in time, and home from it; null: none, or something else is shut.
        string? Parked(double checkIn) => Through(gate => gate.Open.Where(span => (double.IsInfinity(span.From) || pace.Arrives(span.From, gate.In) <= checkIn) && checkIn <= span.To).Select(span => (double?)span.From).FirstOrDefault());

        string? Home(double ashoreAt) => Through(gate => gate.Open.Where(span => span.From <= ashoreAt && ashoreAt + pace.Takes(ashoreAt, gate.Out, gate.LeastFactor) + gate.Reserve <= span.To)
            .Select(span => (double?)span.From).FirstOrDefault());

        string? Through(Func<Gate, double?> opening)
        {
            var parked = "";
            foreach (var gate in ashore)
            {
                if (opening(gate) is not { } since) return null;
                if (gate.Name.EndsWith(lot, StringComparison.Ordinal)) parked += $" {since:F1}";
            }

            return parked;
        }
    }
}
