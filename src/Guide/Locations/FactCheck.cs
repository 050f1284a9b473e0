using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>Who says a fact, and when a member last found it so. Facts age: past their period they read "needs checking".</summary>
public sealed record FactCheck
{
    /// <summary>Access, parking, overnight rules, permissions.</summary>
    public static readonly Period UsualPeriod = Period.FromMonths(12);

    /// <summary>Hazards age faster.</summary>
    public static readonly Period HazardPeriod = Period.FromMonths(3);

    private FactCheck() { }

    public FactCheck(string saysWho, LocalDate lastChecked, string? checkedBy = null, string? link = null)
    {
        SaysWho = Require.Text(saysWho, 160, "Who says so");
        LastChecked = lastChecked;
        CheckedBy = Require.TextOrNull(checkedBy, 80, "Who checked it");
        Link = Require.LinkOrNull(link, "The link to the source");
    }

    /// <summary>The source as one would quote it: a sign, an owner, a byelaw. Fit for visitors.</summary>
    public string SaysWho { get; private init; } = "";

    public LocalDate LastChecked { get; private init; }

    /// <summary>The member who looked. Never shown to visitors.</summary>
    public string? CheckedBy { get; private init; }

    public string? Link { get; private init; }

    public bool NeedsChecking(LocalDate on, Period? period = null) => LastChecked + (period ?? UsualPeriod) < on;

    /// <summary>"Still correct today": one tap.</summary>
    public FactCheck StillCorrect(LocalDate on, string by) => new(SaysWho, on, by, Link);
}
