using System.Globalization;
using Microsoft.Extensions.Configuration;

namespace Foreshore.Filler;

/// <summary>How much, and which of the many like it.</summary>
internal sealed record Asked(int Times, int Years, int Seed, string? Fault = null)
{
    public static Asked Read(IConfiguration settings)
    {
        foreach (var (name, least, most) in new[] { ("times", 1, 100), ("years", 0, 20), ("seed", 1, int.MaxValue) })
            if (settings[name] is { } text && !(int.TryParse(text, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most))
                return new(0, 0, 0, $"filler: --{name} wants a whole number from {least} to {most}; not \"{text}\".");
        return new(Number("times", 1), Number("years", 3), Number("seed", 1));

        int Number(string name, int otherwise) => int.Parse(settings[name] ?? otherwise.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
