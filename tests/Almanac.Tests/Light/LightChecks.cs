using System.Globalization;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Almanac.Light;

internal sealed class LightChecks : IChecks
{
    private readonly Dictionary<string, SeasonTable> tables = [];

    public IEnumerable<Check> All()
    {
        var twilights = PublishedTable.Read("Sun/usno-twilight.csv");
        yield return Check.Against(twilights, "Light: dawn begins, dusk and night end, dark marks", (log, row) =>
        {
            var today = SessionsOf(row, 0);
            var before = SessionsOf(row, -1);
            log.Add(Seconds(row.Time("nauticalDawn"), today.Dawn?.Start), 62);
            log.Add(Seconds(row.Time("nauticalDawn"), before.Night?.End), 62);
            log.Add(Seconds(row.Time("astronomicalDawn"), before.Night?.Dark?.End), 62);
            log.Add(Seconds(row.Time("nauticalDusk"), today.Dusk?.End), 62);
            log.Add(Seconds(row.Time("nauticalDusk"), today.Night?.Start), 62);
            log.Add(Seconds(row.Time("astronomicalDusk"), today.Night?.Dark?.Start), 62);
        });

        yield return new Check(
            "Light: the sun meets the frame's edge",
            "pinhole geometry worked out by hand for a level camera: 24 mm, 30 degrees right of the axis, 5 degrees up: 13.86 mm and 2.42 mm from the centre (as in Camera/pinhole-projection.csv)",
            "s", "4 s", "half of the last printed digit is 0.01 degrees, which the sun passes in 3 to 4 seconds", FrameEdges);

        var seasons = PublishedTable.Read("Light/astronomy-engine-seasons.csv");
        yield return Check.Against(seasons, "Light: season table, days that count for an hour", (log, row) =>
        {
            var month = MonthOf(row);
            var days = month.Month.ToDateInterval().Length;
            var counts = row["daysByHour"].Split(' ');
            for (var hour = 0; hour < 24; hour++)
                log.Compare(double.Parse(counts[hour], CultureInfo.InvariantCulture), month.ShareByHour[hour] * days, 1.001);
        });
        yield return Check.Against(seasons, "Light: season table, minutes a day", "minutes", "0.5 minutes, as much as one run of ten minutes more or less, and 2 s a day", (log, row) =>
            log.Compare(row.Number("minutesADay"), MonthOf(row).MeanMinutesUnrestricted, 0.5));
    }

    private SeasonMonth MonthOf(PublishedRow row)
    {
        var name = row["place"];
        if (!tables.TryGetValue(name, out var table))
        {
            var scene = Coast.Scene(new Position(row.Number("latitude"), row.Number("longitude")), row.Number("facing"),
                WantedLight.GoldenLight, WantedLight.BlueLight, WantedLight.TwilightGlow, WantedLight.AntiTwilightArch, WantedLight.SunInFrame, WantedLight.SideLight);
            tables[name] = table = SeasonTables.For(scene, Coast.Zone(row["zone"]), new YearMonth(2026, 3), HoursOut.Unrestricted, Coast.Year2026);
        }

        var light = Enum.Parse<WantedLight>(row["light"]);
        var month = YearMonthPattern.Iso.Parse(row["month"]).Value;
        return table.PerLight.Single(layer => layer.Light == light).Months.Single(one => one.Month == month);
    }

    private static void FrameEdges(CheckLog log)
    {
        var day = new Interval(Instant.FromUtc(2026, 3, 20, 9, 0), Instant.FromUtc(2026, 3, 20, 15, 0));
        var time = SunCrossings.OfAltitude(Refraction.Airless(5), Coast.Eastport, day, Coast.Year2026.Sun).Single().Time;
        var facing = Bearing.FromDegrees(Coast.Year2026.Sun.At(time, Coast.Eastport).AzimuthDegrees - 30);
        // The edge beside the sun lies where the example puts it; the other edges are out of its way.
        foreach (var (width, height) in new[] { (2 * 13.86, 24.0), (36.0, 2 * 2.42) })
        {
            log.At($"{width} × {height} mm");
            var frame = new Frame(facing, 0, new Lens(24, new Sensor(width, height), Orientation.Landscape));
            var scene = new Scene(new Observer(Coast.Eastport, null, Skyline.AssumedSea), frame, [WantedLight.SunInFrame]);
            log.Add(Seconds(time, LightRuns.Between(scene, day.Start, day.End, Coast.Year2026).Runs.Single().End), 4);
        }
    }

    private static SessionDay SessionsOf(PublishedRow row, int daysOn)
    {
        var zone = DateTimeZone.ForOffset(Offset.FromHours((int)row.Number("zoneHours")));
        var date = LocalDatePattern.Iso.Parse(row["localDate"]).Value.PlusDays(daysOn);
        var noon = date.At(LocalTime.Noon).InZoneStrictly(zone).ToInstant();
        var ephemeris = SunEphemeris.Covering(noon - Duration.FromDays(2), noon + Duration.FromDays(2));
        return Sessions.On(date, new Position(row.Number("latitude"), row.Number("longitude")), zone, ephemeris);
    }

    private static double Seconds(Instant expected, Instant? found) => found is { } time ? (time - expected).TotalSeconds : double.NaN;
}
