using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Members;

/// <summary>The form of home point and hours as typed; flat, so that it binds from a plain post.</summary>
public sealed class YoursForm
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    public string? Home { get; set; }

    public string? EarliestAlarm { get; set; }

    public string? LatestHome { get; set; }

    /// <summary>The hours hold for the night sky too.</summary>
    public bool AtNight { get; set; }

    public string? Back { get; set; }

    public static YoursForm Of(Preferences kept, HoursOut usual)
    {
        var hours = kept.Hours ?? usual;
        return new YoursForm
        {
            Home = kept.Home is { } home ? string.Create(CultureInfo.InvariantCulture, $"{home.LatitudeDegrees:F2}, {home.LongitudeDegrees:F2}") : null,
            EarliestAlarm = Clock.Format(hours.EarliestAlarm).PadLeft(5, '0'),
            LatestHome = Clock.Format(hours.LatestHome).PadLeft(5, '0'),
            AtNight = hours.HoldAtNight,
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
        return faults.Count > 0 ? (null, faults) : (new Preferences(home, new HoursOut(alarm!.Value, latest!.Value) { HoldAtNight = AtNight }), faults);
    }

    private Position? HomeTyped(List<FieldFault> faults)
    {
        if (string.IsNullOrWhiteSpace(Home))
            return null;

        var (position, fault) = TypedPosition.Read(Home);
        if (fault is not null)
            faults.Add(new("home", $"{fault} Leave it empty to keep no home point."));
        return position is { } home ? Preferences.Rounded(home) : null;
    }

    private static LocalTime? TimeTyped(string? typed, string field, List<FieldFault> faults)
    {
        // A browser's time field may add seconds.
        if (Clock.Parse(typed?.Trim() is { Length: 8 } withSeconds ? withSeconds[..5] : typed?.Trim() ?? "").TryGetValue(default, out var time))
            return time;
        faults.Add(new(field, "Enter a time of day in hours and minutes, like 04:30."));
        return null;
    }
}
