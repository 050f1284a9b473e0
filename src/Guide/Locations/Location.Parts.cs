using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>Verbs that add to a place, and what its parts say together.</summary>
public sealed partial class Location
{
    /// <summary>Whether any picture here has something in it whose place and height are recorded.</summary>
    public bool HasSubjects => VantagePoints.Any(point => point.Compositions.Any(picture => picture.Subject is not null));

    public AccessRoute AddRoute(string name)
    {
        var route = new AccessRoute(name, routes.Count + 1);
        routes.Add(route);
        return route;
    }

    /// <summary>A way that was made elsewhere, as the last that the club would take.</summary>
    public AccessRoute Add(AccessRoute route)
    {
        route.TakePlace(routes.Count == 0 ? 1 : routes.Max(each => each.Order) + 1);
        routes.Add(route);
        return route;
    }

    /// <summary>Gives a way its place in the club's order, 1 first; the others close up.</summary>
    public Location Prefer(AccessRoute route, int place)
    {
        Require.That(place >= 1 && place <= routes.Count, $"{Name} has {routes.Count} {(routes.Count == 1 ? "way" : "ways")} in. Enter a number from 1 to {routes.Count}.");
        List<AccessRoute> others = [.. routes.Where(each => each != route).OrderBy(each => each.Order)];
        others.Insert(place - 1, route);
        for (var i = 0; i < others.Count; i++)
            others[i].TakePlace(i + 1);
        routes.Sort((one, other) => one.Order.CompareTo(other.Order));
        return this;
    }

    public ParkingArea AddParking(ParkingArea area)
    {
        parking.Add(area);
        return area;
    }

    public OvernightRule AddOvernightRule(OvernightRule rule)
    {
        Require.That(!overnightRules.Any(r => r.Sleeper == rule.Sleeper && r.ParkingArea == rule.ParkingArea),
            $"There is already an overnight rule for {rule.Sleeper} there. Change that one.");
        overnightRules.Add(rule);
        return rule;
    }

    public PermissionLetter AddPermission(PermissionLetter letter)
    {
        permissionLetters.Add(letter);
        return letter;
    }

    public HazardRating Rate(HazardRating rating)
    {
        Require.That(!hazardRatings.Any(r => r.Kind == rating.Kind && r.VantagePoint == rating.VantagePoint),
            $"There is already a rating for {rating.Kind} there. Confirm or change that one.");
        hazardRatings.Add(rating);
        return rating;
    }

    public HazardNote Report(HazardNote note)
    {
        hazardNotes.Add(note);
        return note;
    }

    public Closure Close(Closure closure)
    {
        closures.Add(closure);
        return closure;
    }

    public VantagePoint AddVantagePoint(VantagePoint vantagePoint)
    {
        Require.That(!vantagePoints.Any(v => v.Slug == vantagePoint.Slug),
            $"{Name} already has a vantage point with the address \"{vantagePoint.Slug}\". Choose another.");
        vantagePoints.Add(vantagePoint);
        return vantagePoint;
    }

    /// <summary>The first route all of whose legs the club may recommend and none of which is closed on that date.</summary>
    public AccessRoute? DefaultRoute(LocalDate on) =>
        routes.OrderBy(r => r.Order).FirstOrDefault(r => r.MayBeRecommended && !r.Legs.Any(leg => IsClosed(leg, on)));

    /// <summary>A place with no such way is never <em>suits</em> and says "no way in that the club may recommend".</summary>
    public bool HasRecommendedWayIn(LocalDate on) => DefaultRoute(on) is not null;

    /// <summary>Closures that forbid going there that day: of the place itself, or of its last open way in.</summary>
    public IReadOnlyList<Closure> ClosuresThatStop(LocalDate on)
    {
        var ofPlace = closures.Where(c => c.Target == ClosureTarget.Location && c.AppliesOn(on));
        // A closed leg stops an outing only where no other route is open.
        var ofLegs = DefaultRoute(on) is null
            ? closures.Where(c => c.Target == ClosureTarget.Leg && c.AppliesOn(on)
                && routes.Any(r => r.MayBeRecommended && r.Legs.Contains(c.Leg)))
            : [];
        return [.. ofPlace, .. ofLegs];
    }

    /// <summary>The same for one vantage point: its own closures come on top.</summary>
    public IReadOnlyList<Closure> ClosuresThatStop(VantagePoint vantagePoint, LocalDate on) =>
        [.. ClosuresThatStop(on), .. closures.Where(c => c.VantagePoint == vantagePoint && c.AppliesOn(on))];

    public bool IsClosed(ParkingArea area, LocalDate on) => closures.Any(c => c.ParkingArea == area && c.AppliesOn(on));

    public bool IsClosed(Leg leg, LocalDate on) => closures.Any(c => c.Leg == leg && c.AppliesOn(on));

    /// <summary>Notes to show on that date, worst first: severe ones at once and until ended or rejected, others within their dates.</summary>
    public IReadOnlyList<HazardNote> NotesShown(LocalDate on, VantagePoint? vantagePoint = null) =>
        [.. hazardNotes.Where(n => n.ShowsOn(on) && (n.VantagePoint is null || vantagePoint is null || n.VantagePoint == vantagePoint))
            .OrderByDescending(n => n.Severity)];
}
