using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>One night of a place, from solar noon to solar noon: its moon, its dark, and when the galaxy's core is up in the dark.</summary>
/// <param name="Evening">The date of its evening.</param>
/// <param name="Moon">How the moon is lit at midnight by the sun.</param>
/// <param name="Up">The moon's rise and set between the noons.</param>
/// <param name="Dark">Dark windows.</param>
/// <param name="Core">Those in which the galaxy's core stands ten degrees high.</param>
/// <param name="IsTwilightAllNight">The sun stays above −18 degrees.</param>
public sealed record PlaceNight(
    LocalDate Evening, MoonPhase Moon, MoonSpan Up, IReadOnlyList<Interval> Dark, IReadOnlyList<Interval> Core, bool IsTwilightAllNight)
{
    private const double Astronomical = -18;

    public static IReadOnlyList<PlaceNight> Next(LocalDate first, int count, Position position, DateTimeZone zone, SkyEphemeris sky)
    {
        var observer = new Observer(position, null, Skyline.AssumedSea);
        var days = Enumerable.Range(0, count + 1).Select(i => SunDays.On(first.PlusDays(i), observer, zone, sky.Sun)).ToList();
        return [.. days.Zip(days.Skip(1), (day, next) => new PlaceNight(
            day.Date, MoonPhases.At(day.MidnightAfter), MoonDays.Between(day.Noon, next.Noon, observer, sky.Moon),
            DarkSky.Between(position, day.Noon, next.Noon, sky), DarkSky.CoreBetween(observer, day.Noon, next.Noon, sky),
            next.MidnightAltitudeDegrees > Astronomical))];
    }

    public string DateWords => Evening.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    public IReadOnlyList<string> DarkWords(DateTimeZone zone) => Dark.Count > 0 ? Words(Dark, zone) : ["none:", IsTwilightAllNight ? "twilight" : "moonlight"];

    public IReadOnlyList<string> CoreWords(DateTimeZone zone) => Core.Count > 0 ? Words(Core, zone) : ["none"];

    private static string[] Words(IReadOnlyList<Interval> windows, DateTimeZone zone) => [.. windows.Select(window => $"{window.Start.Clock(zone)}–{window.End.Clock(zone)}")];
}
