using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Stars;

internal sealed class StarChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Stars/galactic.csv"), "Galaxy: its centre and pole", (log, row) =>
            log.Add(Apart(Galactic.ToIcrs(row.Number("longitude"), row.Number("latitude")), Place(row, "")), 1e-4));

        yield return Check.Against(PublishedTable.Read("Stars/meeus.csv"), "Stars: precession and apparent place, worked examples", (log, row) =>
        {
            var t = row.Number("daysFromJ2000") / 36525;
            var found = row["example"] == "21.b" ? ApparentPlace.Precessed(Place(row, "0"), t) : ApparentPlace.Of(Place(row, "0"), t);
            log.Add(Apart(found, Place(row, "")), 1e-4);
        });

        yield return Check.Against(PublishedTable.Read("Stars/astronomy-engine-centre.csv"), "Galaxy: azimuth and altitude of its centre, 1950 to 2100", (log, row) =>
        {
            var time = row.Time("time");
            var found = GalaxyEphemeris.Covering(time, time).CentreAt(time, new Position(row.Number("latitude"), row.Number("longitude")));
            log.Add(Angle(Direction.Of(found.AzimuthDegrees, found.AltitudeDegrees), Direction.Of(row.Number("azimuth"), row.Number("altitude"))), 0.005);
        });
    }

    private static Equatorial Place(PublishedRow row, string suffix) => new(row.Number("rightAscension" + suffix), row.Number("declination" + suffix));

    private static double Apart(Equatorial a, Equatorial b) =>
        Angle(Direction.Of(a.RightAscensionDegrees, a.DeclinationDegrees), Direction.Of(b.RightAscensionDegrees, b.DeclinationDegrees));

    private static double Angle(Direction a, Direction b)
    {
        double east = a.East - b.East, north = a.North - b.North, up = a.Up - b.Up;
        return 2 * Math.Asin(Math.Sqrt(east * east + north * north + up * up) / 2) * (180 / Math.PI);
    }
}
