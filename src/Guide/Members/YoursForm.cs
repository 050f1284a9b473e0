using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Shell;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Members;

/// <summary>The form of home point and hours as typed; flat, so that it binds from a plain post.</summary>
public sealed class YoursForm
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    public string? Latitude { get; set; }

    public string? Longitude { get; set; }

    public string? EarliestAlarm { get; set; }

    public string? LatestHome { get; set; }

    public string? Back { get; set; }

    public static YoursForm Of(Preferences kept, HoursOut usual)
    {
        var hours = kept.Hours ?? usual;
        return new YoursForm
        {
            Latitude = kept.Home?.LatitudeDegrees.ToString("F2", CultureInfo.InvariantCulture),
            Longitude = kept.Home?.LongitudeDegrees.ToString("F2", CultureInfo.InvariantCulture),
            EarliestAlarm = Clock.Format(hours.EarliestAlarm).PadLeft(5, '0'),
            LatestHome = Clock.Format(hours.LatestHome).PadLeft(5, '0'),
        };
    }

    /// <summary>What was typed as preferences, or the faults to mend; nothing is kept while there is one.</summary>
    public (Preferences? Preferences, IReadOnlyList<FieldFault> Faults) Read()
    {
        List<FieldFault> faults = [];
        var home = HomeTyped(faults);
        var alarm = TimeTyped(EarliestAlarm, "alarm", faults);
        var latest = TimeTyped(LatestHome, "latest", faults);
        if (alarm is not null && alarm == latest)
            faults.Add(new("latest", "The two times are the same, which leaves no time out. Enter a later return, like 23:00."));
        return faults.Count > 0 ? (null, faults) : (new Preferences(home, new HoursOut(alarm!.Value, latest!.Value)), faults);
    }

    private Position? HomeTyped(List<FieldFault> faults)
    {
        if (string.IsNullOrWhiteSpace(Latitude) && string.IsNullOrWhiteSpace(Longitude))
            return null;

        var latitude = Degrees(Latitude, 90);
        var longitude = Degrees(Longitude, 180);
        if (latitude is null)
            faults.Add(new("latitude", "Enter a latitude between -90 and 90, like 44.65. Leave both empty to keep no home point."));
        if (longitude is null)
            faults.Add(new("longitude", "Enter a longitude between -180 and 180, west negative, like -67.25. Leave both empty to keep no home point."));
        return latitude is { } lat && longitude is { } lon ? Preferences.Rounded(new Position(lat, lon)) : null;
    }

    private static double? Degrees(string? typed, double most) =>
        double.TryParse(typed?.Trim().Replace(',', '.').Replace('−', '-'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees)
        && Math.Abs(degrees) <= most ? degrees : null;

    private static LocalTime? TimeTyped(string? typed, string field, List<FieldFault> faults)
    {
        // A browser's time field may add seconds.
        if (Clock.Parse(typed?.Trim() is { Length: 8 } withSeconds ? withSeconds[..5] : typed?.Trim() ?? "").TryGetValue(default, out var time))
            return time;
        faults.Add(new(field, "Enter a time of day in hours and minutes, like 04:30."));
        return null;
    }
}
