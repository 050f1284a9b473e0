using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Compositions;
using NodaTime;

namespace Foreshore.Guide.Elevation;

/// <summary>Where a skyline is from, in words that stay with it.</summary>
internal static class SkylineOrigin
{
    public static string Computed(SkylineQuestion question, ComputedSkyline found, IEnumerable<string> files)
    {
        var names = string.Join(", ", files);
        return string.Create(CultureInfo.InvariantCulture,
            $"Computed from {(names.Length <= 200 ? names : names[..200] + "…")}, for an eye {question.EyeMetresAboveSea:0.0} m above mean sea level, refraction coefficient {question.RefractionCoefficient:0.00}, to {found.ToleranceDegrees:0.00}°; {(question.OutsideIsSea ? "ground outside the files taken as open sea" : "ground outside the files unknown")}, unmeasured ground as no higher than {found.HighestMetres:0} m. Trees, buildings and what lies nearer than the files’ spacing are not in it.");
    }

    public static string Outcome(SkylineQuestion question, ComputedSkyline found)
    {
        var unknown = found.UnknownShare > 0 ? $" {found.UnknownShare * 100:0} per cent of the circle stay unknown: files are missing there, or have voids." : "";
        var under = found.GroundMetres > question.EyeMetresAboveSea
            ? $" The files put the ground at {found.GroundMetres:0} m, above the eye at {question.EyeMetresAboveSea:0.0} m: what is near is not to be relied on, draw it by hand." : "";
        return string.Create(CultureInfo.InvariantCulture, $"The skyline has {found.Skyline.Points.Count} corner{(found.Skyline.Points.Count == 1 ? "" : "s")}.") + unknown + under;
    }

    public const string ByHand = "Drawn by hand, bearings true.";

    public static string OnTheSpot(double declination, LocalDate on) =>
        $"Taken on the spot with a compass, declination {Declination.Words(declination)} ({MagneticField.Model}, {Access.AccessWords.Day(on)}) reckoned in.";
}
