using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Access;

/// <summary>A way to the place: ordered legs.</summary>
public sealed class AccessRoute
{
    private readonly List<Leg> legs = [];
    private readonly List<RouteParking> parking = [];

    private AccessRoute() { }

    internal AccessRoute(string name, int order)
    {
        Name = Require.Text(name, 80, "The route's name");
        Order = order;
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public string Name { get; private set; } = "";

    /// <summary>1 is the one the club prefers; a route with a private, closed or unknown leg is never the default, whatever its order.</summary>
    public int Order { get; private set; }

    public string? Notes { get; private set; }

    public uint Version { get; private set; }

    public IReadOnlyList<Leg> Legs => legs;

    /// <summary>Car parks that serve it, the one the club would use first.</summary>
    public IReadOnlyList<RouteParking> Parking => parking;

    /// <summary>No leg is private, closed or of unknown standing, and there is at least one leg.</summary>
    public bool MayBeRecommended => legs.Count > 0 && legs.All(leg => leg.MayBeRecommended);

    public AccessRoute Call(string name, string? notes)
    {
        Name = Require.Text(name, 80, "The route's name");
        Notes = Require.TextOrNull(notes, 600, "The notes");
        return this;
    }

    public AccessRoute Note(string notes)
    {
        Notes = Require.Text(notes, 600, "The notes");
        return this;
    }

    /// <summary>One more car park that serves it, after those it has.</summary>
    public AccessRoute From(ParkingArea lot, double? walkMinutes)
    {
        Require.That(!parking.Any(each => each.ParkingArea == lot), $"{lot.Name} already serves {Name}. Change the walk from it instead.");
        parking.Add(new RouteParking(lot, parking.Count + 1, walkMinutes));
        return this;
    }

    /// <summary>These car parks serve it, in this order, and no others.</summary>
    public AccessRoute ServedBy(IReadOnlyList<(ParkingArea Lot, double? WalkMinutes)> lots)
    {
        Require.That(lots.DistinctBy(each => each.Lot).Count() == lots.Count, $"A car park stands twice among those of {Name}. Name each once.");
        parking.RemoveAll(each => !lots.Any(lot => lot.Lot == each.ParkingArea));
        for (var i = 0; i < lots.Count; i++)
        {
            if (parking.Find(each => each.ParkingArea == lots[i].Lot) is { } held)
                held.Serve(i + 1, lots[i].WalkMinutes);
            else
                parking.Add(new RouteParking(lots[i].Lot, i + 1, lots[i].WalkMinutes));
        }

        parking.Sort((one, other) => one.Order.CompareTo(other.Order));
        return this;
    }

    internal void TakePlace(int order) => Order = order;

    public AccessRoute Then(Leg leg)
    {
        leg.TakePlace(legs.Count + 1);
        legs.Add(leg);
        return this;
    }
}
