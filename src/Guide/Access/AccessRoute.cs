using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Access;

/// <summary>A way to the place: ordered legs.</summary>
public sealed class AccessRoute
{
    private readonly List<Leg> legs = [];

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

    /// <summary>No leg is private, closed or of unknown standing, and there is at least one leg.</summary>
    public bool MayBeRecommended => legs.Count > 0 && legs.All(leg => leg.MayBeRecommended);

    public AccessRoute Note(string notes)
    {
        Notes = Require.Text(notes, 600, "The notes");
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
