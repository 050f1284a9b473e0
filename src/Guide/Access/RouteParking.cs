using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Access;

/// <summary>A car park that serves a way in, and the walk from it to where the way begins on foot.</summary>
public sealed class RouteParking
{
    private RouteParking() { }

    internal RouteParking(ParkingArea lot, int order, double? walkMinutes)
    {
        ParkingArea = lot;
        Serve(order, walkMinutes);
    }

    public int AccessRouteId { get; private set; }

    public int ParkingAreaId { get; private set; }

    /// <summary>Loaded with the place's car parks.</summary>
    public ParkingArea ParkingArea { get; private set; } = null!;

    /// <summary>1 is the one the club would use.</summary>
    public int Order { get; private set; }

    /// <summary>Minutes in daylight from the car to the route's start on foot; null: nobody has timed them.</summary>
    public double? WalkMinutes { get; private set; }

    public uint Version { get; private set; }

    internal void Serve(int order, double? walkMinutes)
    {
        Order = order;
        WalkMinutes = Require.BetweenOrNull(walkMinutes, 0, 1440, "The walk from the car park", "minutes");
    }
}
