using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Access;

/// <summary>A way in that leads to one stance, with what is known of it for that stance alone.</summary>
public sealed class StanceWay
{
    private StanceWay() { }

    internal StanceWay(AccessRoute route, int order, double? endMinutes, double? walkInMinutes, double? walkOutMinutes)
    {
        Route = route;
        Lead(order, endMinutes, walkInMinutes, walkOutMinutes);
    }

    public int VantagePointId { get; private set; }

    public int RouteId { get; private set; }

    /// <summary>Loaded with the place's ways in.</summary>
    public AccessRoute Route { get; private set; } = null!;

    /// <summary>1 is the one the club prefers for this stance.</summary>
    public int Order { get; private set; }

    /// <summary>Minutes in daylight from the route's end to the stance; null: nobody has timed them.</summary>
    public double? EndMinutes { get; private set; }

    /// <summary>Walked and timed whole, in daylight, from the route's first car park to the stance; null: not measured.</summary>
    public double? WalkInMinutes { get; private set; }

    /// <summary>The same, on the way back.</summary>
    public double? WalkOutMinutes { get; private set; }

    public uint Version { get; private set; }

    internal void Lead(int order, double? endMinutes, double? walkInMinutes, double? walkOutMinutes)
    {
        Order = order;
        EndMinutes = Require.BetweenOrNull(endMinutes, 0, 1440, "The walk from the route's end to the stance", "minutes");
        WalkInMinutes = Require.BetweenOrNull(walkInMinutes, 0, 1440, "The walk in", "minutes");
        WalkOutMinutes = Require.BetweenOrNull(walkOutMinutes, 0, 1440, "The walk out", "minutes");
    }
}
