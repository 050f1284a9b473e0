using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Tides;

namespace Foreshore.Guide.Compositions;

/// <summary>What a picture wishes of tide and ground, as the almanac asks for it.</summary>
/// <param name="Tide">Null: any, or one that can't be judged.</param>
/// <param name="Ground">Null: any, or one that can't be judged.</param>
/// <param name="Years">The thirds of the station's years.</param>
/// <param name="NotKnown">Why a wish can't be judged, in words ready to print.</param>
public sealed record TideWishes(WantedTide? Tide, WantedGround? Ground, Func<int, TideYear?> Years, IReadOnlyList<string> NotKnown)
{
    public static readonly TideWishes None = new(null, null, _ => null, []);

    public static TideWishes Of(Composition picture, PlaceWater water)
    {
        var (tide, tideUnknown) = picture.Tide is { } wish ? water.Of(wish) : (null, null);
        var (ground, groundUnknown) = picture.Ground is { } asked ? water.Of(asked) : (null, null);
        return new(tide, ground, water.Years, [.. new[] { tideUnknown, groundUnknown }.OfType<string>()]);
    }

    /// <summary>Whether anything is asked that only the tide answers.</summary>
    public bool NeedTide => Tide is not null || Ground is not null;
}
