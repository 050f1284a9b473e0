namespace Foreshore.Guide.Contributions;

/// <summary>Hours and sailings in a sheet: one line of text each, in the notations that say what they could not read.</summary>
internal static class HoursFields
{
    public const string Name = "open-hours";

    public static readonly SheetField Ask = new("ask-whom", "Whom to ask")
    {
        Longest = 200,
        Hint = "For what is on request or by permit. It is printed after \"ask\": the boatman, 207 555 0142, the evening before",
    };

    public static readonly IReadOnlyList<SheetField> Sailings =
    [
        Of("sailings-out", "Sailings towards the vantage point"),
        Of("sailings-back", "Sailings back"),
    ];

    public static SheetField Hours(string label) => new(Name, label, FieldKind.Hours)
    {
        Longest = Access.RuleNotation.Longest,
        IsGuarded = true,
        Hint = "One rule a line: season, days, hours. May-Oct Mon-Fri 08:00-18:00, or sunrise-sunset, 30 min before sunrise-sunset, open, closed, by permit, on request. "
            + "The first rule that names a date counts; a date that none names is closed.",
    };

    private static SheetField Of(string name, string label) => new(name, label, FieldKind.Sailings)
    {
        Longest = Access.RuleNotation.Longest,
        IsGuarded = true,
        Hint = "One rule a line: season, days, sailings. May-Oct Sat,Sun 08:00 12:00 17:30, or first 07:00 last 18:30 every 90, on request, no sailings. "
            + "A sailing agreed by hand: agreed 2026-11-28 14:15. Empty: nobody knows.",
    };
}
