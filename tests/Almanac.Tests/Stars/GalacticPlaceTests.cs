using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stars;

/// <summary>Places of the galaxy's own coordinates in an observer's sky.</summary>
public class GalacticPlaceTests
{
    private static readonly Instant From = Instant.FromUtc(2026, 1, 1, 0, 0), To = Instant.FromUtc(2028, 1, 1, 0, 0);
    private static readonly GalaxyEphemeris Galaxy = GalaxyEphemeris.Covering(From, To);

    // Each place by itself, through precession, aberration and nutation, turned to the horizon: the short way by centre and
    // pole leaves out how aberration differs over the sky, at most twice its constant: 41″.
    [Fact]
    public void Any_place_stands_where_its_own_star_would()
    {
        for (var i = 0; i < 400; i++)
        {
            var time = From + Duration.FromHours(i * 43.7);
            var (longitude, latitude) = (i * 37.0 % 360, i * 13.0 % 180 - 90);
            var position = new Position(i * 7.0 % 170 - 85, i * 11.0 % 360 - 180);
            var found = Galaxy.At(time, position, longitude, latitude);
            Assert.InRange(Apart(found, Star(time, position, Galactic.ToIcrs(longitude, latitude))), 0, 0.012);
        }
    }

    // Vega: 18h 36m 56.3s, +38° 47′ 01″ (ICRS) is l 67.45, b +19.24; from memory of the usual star catalogues.
    [Fact]
    public void Vega_stands_at_its_galactic_place()
    {
        var time = Instant.FromUtc(2026, 7, 3, 4, 0);
        var position = new Position(44.6, -67.5);
        Assert.InRange(Apart(Galaxy.At(time, position, 67.45, 19.24), Star(time, position, new Equatorial(279.2347, 38.7837))), 0, 0.02);
    }

    private static Horizontal Star(Instant time, Position position, Equatorial icrs)
    {
        var days = JulianDay.DaysFromJ2000(time);
        var centuries = (days + DeltaT.Seconds(time) / 86400) / 36525;
        var nutation = Nutation.At(centuries);
        var (x, y, z) = ApparentPlace.VectorOf(icrs, centuries, nutation);
        return new StarSite(position).See(days, nutation.EquationOfEquinoxesDegrees * Math.PI / 180, x, y, z).Horizontal;
    }

    private static double Apart(Horizontal one, Horizontal other)
    {
        var (a, b) = (Direction.Of(one.AzimuthDegrees, one.AltitudeDegrees), Direction.Of(other.AzimuthDegrees, other.AltitudeDegrees));
        double east = a.East - b.East, north = a.North - b.North, up = a.Up - b.Up;
        return 2 * Math.Asin(Math.Sqrt(east * east + north * north + up * up) / 2) * (180 / Math.PI);
    }
}
