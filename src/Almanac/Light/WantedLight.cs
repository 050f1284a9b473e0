namespace Foreshore.Almanac.Light;

/// <summary>The kinds of light a composition may want. When each holds is a row of the light table.</summary>
public enum WantedLight
{
    /// <summary>The disc inside the frame, low.</summary>
    SunInFrame,

    /// <summary>The disc on the edge of a land skyline, inside the frame.</summary>
    SunburstOverSkyline,

    /// <summary>The sun ahead but outside the frame.</summary>
    BackLight,

    /// <summary>The sun to one side.</summary>
    SideLight,

    /// <summary>The sun behind the camera.</summary>
    FrontLight,

    /// <summary>The low sun's warm light.</summary>
    GoldenLight,

    /// <summary>Colour in the sky on the sun's side, sun below the horizon.</summary>
    TwilightGlow,

    /// <summary>The rosy arch above the Earth's shadow, opposite the sun.</summary>
    AntiTwilightArch,

    /// <summary>The deep blue of civil twilight's end.</summary>
    BlueLight,

    /// <summary>Overcast light.</summary>
    SoftLight,

    /// <summary>Any daylight, for waves in a storm.</summary>
    AnyDaylight,

    /// <summary>The full moon near the skyline while the land is still lit.</summary>
    FullMoonBalanced,

    /// <summary>A thin crescent in the frame in twilight.</summary>
    ThinCrescent,

    /// <summary>The coast lit by a moon outside the frame.</summary>
    MoonlitCoast,

    /// <summary>The galaxy's core above the frame's span in a dark sky.</summary>
    GalaxyCore,

    /// <summary>The galaxy's band in the frame in a dark sky.</summary>
    GalaxyBand,

    /// <summary>Stars trailing in a dark sky.</summary>
    StarTrails,
}
