using Foreshore.Almanac.Light;

namespace Foreshore.Guide.Compositions;

/// <summary>Wanted light in the words of the light table, and as it stands in an address.</summary>
public static class WantedWords
{
    public static string Words(this WantedLight light) => LightTable.Of(light).Name;

    /// <summary>"sun in frame or twilight glow": any of them suits.</summary>
    public static string Words(this IEnumerable<WantedLight> wanted) => string.Join(" or ", wanted.Select(Words));

    /// <summary>When the light holds for this picture: the table's words, and the lower limit of the galaxy's core where it is set.</summary>
    public static string WhenWords(this Composition picture, WantedLight light) =>
        LightTable.Of(light).When + (light == WantedLight.GalaxyCore && picture.GalaxyFromFiveDegrees ? "; here from 5 degrees up where it stands over the sea" : "");

    /// <summary>For example <c>sun-in-frame</c>.</summary>
    public static string Address(this WantedLight light) => PartOfAddress.Of(light);
}

/// <summary>Enumerated words as parts of an address: <c>SureFooted</c> is <c>sure-footed</c>.</summary>
internal static class PartOfAddress
{
    public static string Of<TEnum>(TEnum value) where TEnum : struct, Enum =>
        string.Concat(value.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));

    public static bool TryRead<TEnum>(string text, out TEnum value) where TEnum : struct, Enum
    {
        value = default;
        foreach (var each in Enum.GetValues<TEnum>())
        {
            if (Of(each) != text)
                continue;
            value = each;
            return true;
        }
        return false;
    }
}
