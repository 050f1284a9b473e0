using System.Text.Json.Serialization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>The day of sun and moon at a place, and its dark.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Date">Local date; the solar day is the one whose noon falls on it.</param>
/// <param name="Zone">IANA time zone of all times here.</param>
/// <param name="LatitudeDegrees">North positive.</param>
/// <param name="LongitudeDegrees">East positive.</param>
/// <param name="HeightMetres">Eye height above mean sea level; null when not given.</param>
/// <param name="DipDegrees">How far the sea horizon lies below the level; 0 when the height was not given.</param>
/// <param name="Horizon">What the horizon was taken to be.</param>
/// <param name="Sun">Events of the sun.</param>
/// <param name="Sessions">Stretches of light people go out for.</param>
/// <param name="MissingSessions">Those that do not happen that day, and why.</param>
/// <param name="Moon">Events of the moon and its phase.</param>
/// <param name="MilkyWay">The dark of the night that follows the noon, and when the galaxy's core is up in it.</param>
internal sealed record AlmanacDayAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, string NotForNavigation,
    DateOnly Date, string Zone, double LatitudeDegrees, double LongitudeDegrees, double? HeightMetres, double DipDegrees, string Horizon,
    SunAnswer Sun, IReadOnlyList<SessionAnswer> Sessions, IReadOnlyList<MissingSession> MissingSessions,
    MoonAnswer Moon, NightAnswer MilkyWay)
{
    public static AlmanacDayAnswer To(AlmanacQuestion question, string? notice)
    {
        var (position, date, zone, height) = question;
        var noon = date.At(LocalTime.Noon).InZoneLeniently(zone).ToInstant();
        // Zones lie up to half a day from the Sun's own time; a night reaches into the next day, polar searches further.
        var ephemeris = SkyEphemeris.Covering(noon - Duration.FromDays(4), noon + Duration.FromDays(4));
        var observer = new Observer(position, height, Skyline.AssumedSea);
        var sessions = Almanac.Light.Sessions.On(date, position, zone, ephemeris.Sun);
        var day = SunDays.On(date, observer, zone, ephemeris.Sun);
        return new(notice, Words.NotForNavigation, date.Iso(), zone.Id, position.LatitudeDegrees, position.LongitudeDegrees, height,
            Math.Round(observer.DipDegrees, 4), "An open sea horizon is assumed.",
            SunAnswer.Of(day, zone, observer.DipDegrees),
            [.. sessions.All.Select(s => SessionAnswer.Of(s, zone))],
            [.. Enum.GetValues<SessionKind>().Where(k => sessions.Of(k) is null).Select(k => new MissingSession(k, sessions.WhyNo(k) ?? ""))],
            MoonAnswer.Of(MoonDays.On(date, observer, zone, ephemeris.Moon), noon, zone, ephemeris.Moon), NightAnswer.Of(day.Noon, observer, zone, ephemeris));
    }
}

/// <summary>Events of the solar day; null where there is none.</summary>
/// <param name="SolarMidnightBefore">Lower transit.</param>
/// <param name="SolarNoon">Upper transit.</param>
/// <param name="SolarMidnightAfter">The next lower transit.</param>
/// <param name="NoonAltitudeDegrees">Airless altitude of the centre at solar noon.</param>
/// <param name="MidnightAltitudeDegrees">Airless altitude of the centre at the solar midnight before.</param>
/// <param name="Stays">"up" or "down" where the sun neither rises nor sets that day, else null.</param>
/// <param name="AstronomicalDawn">Centre at −18°.</param>
/// <param name="NauticalDawn">Centre at −12°.</param>
/// <param name="CivilDawn">Centre at −6°.</param>
/// <param name="StandardRise">Centre at −0.833°, as almanacs print it.</param>
/// <param name="Rise">Apparent upper limb at the horizon, dip counted.</param>
/// <param name="Set">Apparent upper limb at the horizon, dip counted.</param>
/// <param name="StandardSet">Centre at −0.833°.</param>
/// <param name="CivilDusk">Centre at −6°.</param>
/// <param name="NauticalDusk">Centre at −12°.</param>
/// <param name="AstronomicalDusk">Centre at −18°.</param>
internal sealed record SunAnswer(
    DateTimeOffset SolarMidnightBefore, DateTimeOffset SolarNoon, DateTimeOffset SolarMidnightAfter,
    double NoonAltitudeDegrees, double MidnightAltitudeDegrees, string? Stays,
    DateTimeOffset? AstronomicalDawn, DateTimeOffset? NauticalDawn, DateTimeOffset? CivilDawn, DateTimeOffset? StandardRise, DateTimeOffset? Rise,
    DateTimeOffset? Set, DateTimeOffset? StandardSet, DateTimeOffset? CivilDusk, DateTimeOffset? NauticalDusk, DateTimeOffset? AstronomicalDusk)
{
    private const double UpperLimbAtLevelDegrees = -0.833;

    public static SunAnswer Of(SunDay day, DateTimeZone zone, double dipDegrees) => new(
        day.MidnightBefore.At(zone), day.Noon.At(zone), day.MidnightAfter.At(zone),
        Math.Round(day.NoonAltitudeDegrees, 3), Math.Round(day.MidnightAltitudeDegrees, 3),
        (day.Rise, day.Set) is (null, null) ? day.NoonAltitudeDegrees > UpperLimbAtLevelDegrees - dipDegrees ? "up" : "down" : null,
        day.AstronomicalDawn.At(zone), day.NauticalDawn.At(zone), day.CivilDawn.At(zone), day.StandardRise.At(zone), day.Rise.At(zone),
        day.Set.At(zone), day.StandardSet.At(zone), day.CivilDusk.At(zone), day.NauticalDusk.At(zone), day.AstronomicalDusk.At(zone));
}

/// <summary>One session.</summary>
/// <param name="Kind">Dawn, day, dusk or night.</param>
/// <param name="Date">The date it bears: a night, its evening's.</param>
/// <param name="Start">Its beginning.</param>
/// <param name="End">Its end.</param>
/// <param name="IsWhiteNight">The sun stays above −12° and the session is the hour each side of solar midnight.</param>
/// <param name="NearlyDark">Sun at or below −15°; null where it never is.</param>
/// <param name="Dark">Sun at or below −18°; null where it never is.</param>
internal sealed record SessionAnswer(SessionKind Kind, DateOnly Date, DateTimeOffset Start, DateTimeOffset End, bool IsWhiteNight, SpanAnswer? NearlyDark, SpanAnswer? Dark)
{
    public static SessionAnswer Of(Session session, DateTimeZone zone) => new(session.Kind, session.Date.Iso(), session.Start.At(zone), session.End.At(zone),
        session.IsWhiteNight, SpanAnswer.Of(session.NearlyDark, zone), SpanAnswer.Of(session.Dark, zone));
}

/// <summary>A stretch of time.</summary>
/// <param name="Start">Its beginning.</param>
/// <param name="End">Its end.</param>
internal sealed record SpanAnswer(DateTimeOffset Start, DateTimeOffset End)
{
    public static SpanAnswer? Of(Interval? span, DateTimeZone zone) => span is { } s ? new(s.Start.At(zone), s.End.At(zone)) : null;
}

/// <summary>A session that does not happen.</summary>
/// <param name="Kind">Which one.</param>
/// <param name="Why">The reason in words.</param>
internal sealed record MissingSession(SessionKind Kind, string Why);
