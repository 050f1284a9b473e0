using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>
/// The light table: one row for each wanted light, in the order of <see cref="WantedLight"/>. Adding a light is adding a
/// row. All numbers are common practice without a source but the twilight angles −6, −12 and −18.
/// </summary>
public static class LightTable
{
    /// <summary>All rows.</summary>
    public static IReadOnlyList<LightRow> Rows { get; } =
    [
        new(WantedLight.SunInFrame, "sun in frame", "the disc is seen inside the frame, no higher than 6 degrees", 10)
        {
            HighestDegrees = 6, Frame = FrameNeed.Inside, Disc = DiscNeed.Visible,
        },
        new(WantedLight.SunburstOverSkyline, "sunburst over the skyline", "the sun stands within 0.6 degrees of a skyline of land, inside the frame", 1)
        {
            Frame = FrameNeed.Inside, WithinLandSkylineDegrees = 0.6,
        },
        new(WantedLight.BackLight, "back light", "the disc is seen ahead, within 60 degrees of the facing but outside the frame, no higher than 20 degrees", 10)
        {
            HighestDegrees = 20, MostRelDegrees = 60, Frame = FrameNeed.Outside, Disc = DiscNeed.Visible,
        },
        new(WantedLight.SideLight, "side light", "the disc is seen 60 to 120 degrees off the facing, no higher than 25 degrees", 10)
        {
            HighestDegrees = 25, LeastRelDegrees = 60, MostRelDegrees = 120, Disc = DiscNeed.Visible,
        },
        new(WantedLight.FrontLight, "front light", "the disc is seen behind the camera, 120 degrees or more off the facing, no higher than 25 degrees", 10)
        {
            HighestDegrees = 25, LeastRelDegrees = 120, Disc = DiscNeed.Visible,
        },
        new(WantedLight.GoldenLight, "golden light", "the sun stands between 50 minutes of arc below level and 6 degrees above; above level its disc is seen", 10)
        {
            LowestDegrees = SunDisc.StandardAltitudeDegrees, HighestDegrees = 6, Disc = DiscNeed.VisibleWhenAboveLevel,
        },
        new(WantedLight.TwilightGlow, "twilight glow", "the sun is down by up to 8 degrees, within 60 degrees of the facing; most colour between 1 and 5 degrees down", 10)
        {
            LowestDegrees = -8, HighestDegrees = 0, MostRelDegrees = 60,
        },
        new(WantedLight.AntiTwilightArch, "anti-twilight arch", "the sun is down by 1 to 5 degrees behind the camera, 120 degrees or more off the facing", 5)
        {
            LowestDegrees = -5, HighestDegrees = -1, LeastRelDegrees = 120,
        },
        new(WantedLight.BlueLight, "blue light", "the sun is down by 4 to 8 degrees", 5)
        {
            LowestDegrees = -8, HighestDegrees = -4,
        },
        new(WantedLight.SoftLight, "soft light", "eight tenths of cloud or more, the sun above −4 degrees", 10)
        {
            LowestDegrees = -4, Needs = LightNeeds.Cloud,
        },
        new(WantedLight.AnyDaylight, "any daylight", "the sun is above −4 degrees", 10)
        {
            LowestDegrees = -4,
        },
        new(WantedLight.FullMoonBalanced, "full moon balanced", "a moon 95 % lit or more stands 0 to 6 degrees above the skyline in the frame, the sun between −7 and 1 degrees", 5)
        {
            LowestDegrees = -7, HighestDegrees = 1, Needs = LightNeeds.Moon,
            Moon = new MoonTerms { LeastLit = 0.95, MostOverSkylineDegrees = 6, Frame = FrameNeed.Inside },
        },
        new(WantedLight.ThinCrescent, "thin crescent", "a moon 2 to 15 % lit is seen in the frame, the sun 4 to 12 degrees down", 5, LightStanding.StandardTwilight)
        {
            LowestDegrees = -12, HighestDegrees = -4, Needs = LightNeeds.Moon,
            Moon = new MoonTerms { LeastLit = 0.02, MostLit = 0.15, IsSeen = true, Frame = FrameNeed.Inside },
        },
        new(WantedLight.MoonlitCoast, "moonlit coast", "a moon half lit or more stands 10 to 45 degrees high outside the frame, the sun at least 12 degrees down", 10, LightStanding.StandardTwilight)
        {
            HighestDegrees = -12, Needs = LightNeeds.Moon,
            Moon = new MoonTerms { LeastLit = 0.5, LowestDegrees = 10, HighestDegrees = 45, Frame = FrameNeed.Outside },
        },
        new(WantedLight.GalaxyCore, "galaxy core", "the core stands 10 degrees high or more (5 over a clear sea horizon, where so set) over the skyline within the frame's span, the sun at least 18 degrees down, the moon down or giving little light", 10, LightStanding.StandardTwilight)
        {
            HighestDegrees = -18, Needs = LightNeeds.Galaxy | LightNeeds.Moon, Galaxy = GalaxyNeed.CoreInSpan, NeedsDarkMoon = true,
        },
        new(WantedLight.GalaxyBand, "galaxy band", "the band stands in the frame, the sun at least 18 degrees down, the moon down or giving little light", 10, LightStanding.StandardTwilight)
        {
            HighestDegrees = -18, Needs = LightNeeds.Galaxy | LightNeeds.Moon, Galaxy = GalaxyNeed.BandInFrame, NeedsDarkMoon = true,
        },
        new(WantedLight.StarTrails, "star trails", "the sun is at least 15 degrees down, the moon down or giving little light", 10)
        {
            HighestDegrees = -15, Needs = LightNeeds.Moon, NeedsDarkMoon = true,
        },
    ];

    /// <summary>The row of a light.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such light.</exception>
    public static LightRow Of(WantedLight light)
    {
        if (!Enum.IsDefined(light))
            throw new ArgumentOutOfRangeException(nameof(light), light, "There is no such light in the table.");
        return Rows[(int)light];
    }
}
