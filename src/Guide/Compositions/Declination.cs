using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>The compass's declination as the guide uses and says it.</summary>
public static class Declination
{
    /// <summary>By the model, to a tenth of a degree, east positive.</summary>
    public static double On(LocalDate date, Position at)
    {
        var field = MagneticField.On(date, at);
        Require.That(field is not null, OutsideYears(date));
        Require.That(field.Value.Zone != CompassZone.Blackout, "So near the magnetic pole no compass can be used. Enter the bearing in degrees true.");
        return Math.Round(field.Value.DeclinationDegrees, 1);
    }

    /// <summary>Why there is none for a date, and what to do.</summary>
    public static string OutsideYears(LocalDate date) =>
        $"The magnetic model {MagneticField.Model} holds from {AccessWords.Day(MagneticField.FirstDate)} to {AccessWords.Day(MagneticField.LastDate)}; {AccessWords.Day(date)} lies outside its years. Give a date within them, or the bearing in degrees true.";

    /// <summary>For example 15.9° W.</summary>
    public static string Words(double degrees) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(degrees):0.0}°{(Math.Round(degrees, 1) switch { > 0 => " E", < 0 => " W", _ => "" })}");
}
