using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>The club's one row of settings.</summary>
public sealed class ClubSettings
{
    /// <summary>Printed first on every demo page, API answer and print.</summary>
    public const string DemoBanner = "Demo: invented access and limits at real coordinates. Do not go by it.";

    /// <summary>There is one row; the database refuses a second.</summary>
    public const int OnlyId = 1;

    private ClubSettings() { }

    public ClubSettings(string clubName, string coastName)
    {
        Rename(clubName, coastName);
    }

    public int Id { get; private set; } = OnlyId;

    public string ClubName { get; private set; } = "";

    /// <summary>The stretch of coast the guide covers, as the club says it.</summary>
    public string CoastName { get; private set; } = "";

    /// <summary>One paragraph under the guide's heading: what this guide is and who keeps it.</summary>
    public string Introduction { get; private set; } = "";

    /// <summary>True for invented content: the shell then prints <see cref="DemoBanner"/> first, everywhere.</summary>
    public bool IsDemo { get; private set; }

    /// <summary>Hours a member goes out unless they say otherwise: no alarm before this…</summary>
    public LocalTime EarliestAlarm { get; private set; } = new(4, 0);

    /// <summary>…and home by this. Earlier than the alarm means: after midnight.</summary>
    public LocalTime LatestHome { get; private set; } = new(23, 0);

    /// <summary>Where the club keeps its own long form of the cautions; <c>null</c> when it has none.</summary>
    public string? CautionsLink { get; private set; }

    /// <summary>Visitors may read public places. False closes the site to anyone not signed in.</summary>
    public bool VisitorsMayRead { get; private set; } = true;

    public uint Version { get; private set; }

    /// <summary>What every page, print and API answer must begin with; <c>null</c> for a club's own guide.</summary>
    public string? Banner => IsDemo ? DemoBanner : null;

    public ClubSettings Rename(string clubName, string coastName)
    {
        ClubName = Require.Text(clubName, 80, "The club's name");
        CoastName = Require.Text(coastName, 80, "The coast's name");
        return this;
    }

    public ClubSettings Introduce(string introduction, string? cautionsLink = null)
    {
        Introduction = Require.Text(introduction, 1000, "The introduction");
        CautionsLink = Require.LinkOrNull(cautionsLink, "The link to the club's cautions");
        return this;
    }

    public ClubSettings GoOutBetween(LocalTime earliestAlarm, LocalTime latestHome)
    {
        Require.That(earliestAlarm != latestHome, "The earliest alarm and the latest return are the same minute, which leaves no time out. Give two times.");
        (EarliestAlarm, LatestHome) = (earliestAlarm, latestHome);
        return this;
    }

    public ClubSettings MarkAsDemo()
    {
        IsDemo = true;
        return this;
    }

    public ClubSettings LetVisitorsRead(bool may)
    {
        VisitorsMayRead = may;
        return this;
    }
}
