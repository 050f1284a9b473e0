using Foreshore.Almanac.Earth;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>What one learns about a stance, one fact a verb.</summary>
public sealed partial class VantagePoint
{
    public VantagePoint Call(string name, string summary)
    {
        Name = Require.Text(name, 80, "The vantage point's name");
        Summary = Require.Text(summary, 400, "The summary");
        return this;
    }

    public VantagePoint Stand(VantageKind kind, Position position, Footing footing)
    {
        (Kind, Footing) = (kind, footing);
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        return this;
    }

    public VantagePoint CheckedAs(FactCheck check)
    {
        Check = check;
        return this;
    }

    /// <summary>States that no waves, or no water at all, come to the stance. Only a warden does, and says why.</summary>
    public VantagePoint Reached(Reach reach, string? because = null)
    {
        Require.That(reach is Reach.Waves or Reach.Unknown || !string.IsNullOrWhiteSpace(because),
            "Why can waves not come there? Without a reason the stance counts as wave-exposed. Write what shelters it.");
        Reach = reach;
        ReachReason = Require.TextOrNull(because, 300, "The reason");
        return this;
    }

    public VantagePoint Measure(GroundHeight? ground)
    {
        Ground = ground;
        return this;
    }

    public VantagePoint Look(double eyeHeightMetres)
    {
        EyeHeightMetres = Require.Between(eyeHeightMetres, 0.05, 10, "The eye height", "m");
        return this;
    }

    public VantagePoint Walk(double? inMinutes, double? outMinutes, bool inTheDark, double? toBeyondReachMinutes = null)
    {
        WalkInMinutes = Require.BetweenOrNull(inMinutes, 0, 1440, "The walk in", "minutes");
        WalkOutMinutes = Require.BetweenOrNull(outMinutes, 0, 1440, "The walk out", "minutes");
        MinutesToBeyondReach = Require.BetweenOrNull(toBeyondReachMinutes, 0, 1440, "The walk to beyond reach of the water", "minutes");
        WalkedInTheDark = inTheDark;
        return this;
    }

    /// <summary>One more way of its own, after those it has. A stance with ways of its own is judged by no other.</summary>
    public VantagePoint By(AccessRoute route, double? endMinutes = null, double? walkInMinutes = null, double? walkOutMinutes = null)
    {
        Require.That(!ways.Any(way => way.Route == route), $"{route.Name} already leads to {Name}. Change its figures instead.");
        ways.Add(new StanceWay(route, ways.Count + 1, endMinutes, walkInMinutes, walkOutMinutes));
        return this;
    }

    /// <summary>These ways lead to it, in this order, and no others; none: all of the place's do.</summary>
    public VantagePoint LedToBy(IReadOnlyList<(AccessRoute Route, double? EndMinutes, double? WalkInMinutes, double? WalkOutMinutes)> own)
    {
        Require.That(own.DistinctBy(each => each.Route).Count() == own.Count, $"A way stands twice among those of {Name}. Name each once.");
        ways.RemoveAll(way => !own.Any(each => each.Route == way.Route));
        for (var i = 0; i < own.Count; i++)
        {
            var (route, end, walkIn, walkOut) = own[i];
            if (ways.Find(way => way.Route == route) is { } held)
                held.Lead(i + 1, end, walkIn, walkOut);
            else
                ways.Add(new StanceWay(route, i + 1, end, walkIn, walkOut));
        }

        ways.Sort((one, other) => one.Order.CompareTo(other.Order));
        return this;
    }

    public VantagePoint Fit(int? tripods)
    {
        Tripods = tripods is { } given ? Require.Between(given, 1, 100, "The number of tripods that fit", "") : null;
        return this;
    }

    public VantagePoint CutOffAbove(TideHeight? height)
    {
        (PathCutOff, IsNeverCutOff) = (height, false);
        return this;
    }

    public VantagePoint NeverCutOff()
    {
        (PathCutOff, IsNeverCutOff) = (null, true);
        return this;
    }

    public VantagePoint UsableBelow(TideHeight? height)
    {
        HighestUsableTide = height;
        return this;
    }

    public VantagePoint UsableIn(SeaLimit? limit)
    {
        Sea = limit;
        return this;
    }

    public VantagePoint WatchFrom(NearbyPlace? place)
    {
        WatchPlace = place;
        return this;
    }

    public VantagePoint WorkInTheDarkFrom(NearbyPlace? place)
    {
        DarkStance = place;
        return this;
    }

    public VantagePoint OnEdge(EdgeDistance edge, double? gustLimitMetresPerSecond = null)
    {
        Edge = edge;
        GustLimitMetresPerSecond = Require.BetweenOrNull(gustLimitMetresPerSecond, 1, 60, "The gust limit", "m/s");
        return this;
    }

    public VantagePoint Under(CliffAbove? cliff)
    {
        Cliff = cliff;
        return this;
    }

    /// <summary>Keeps a skyline with where it is from; without points, none is recorded any more.</summary>
    public VantagePoint Draw(Skyline skyline, string? origin = null, LocalDate? madeOn = null)
    {
        SkylineText = skyline.IsAssumed ? null : SkylineNotation.Write(skyline);
        SkylineOrigin = skyline.IsAssumed ? null : Require.TextOrNull(origin, 600, "Where the skyline is from");
        SkylineMadeOn = skyline.IsAssumed ? null : madeOn;
        return this;
    }

    public VantagePoint Sketched(string fileName)
    {
        Sketch = SketchName.Of(fileName);
        return this;
    }

    /// <summary>Renamed addresses answer 301 from the old one.</summary>
    public VantagePoint ChangeSlug(string slug)
    {
        Slug = Locations.Slug.Of(slug);
        return this;
    }

    public VantagePoint StillCorrect(LocalDate on, string by)
    {
        Check = Check.StillCorrect(on, by);
        return this;
    }
}
