using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Elevation;

/// <summary>A skyline as typed, a corner a line; flat, so that it binds from a plain post.</summary>
public sealed class SkylineForm
{
    private const int MostCorners = 400;

    public string? Rows { get; set; }

    /// <summary><c>true</c> or <c>compass</c>.</summary>
    public string? Bearings { get; set; }

    public string? ReadOn { get; set; }

    public bool OutsideIsSea { get; set; }

    public static SkylineForm Of(VantagePoint stance, LocalDate today) => new()
    {
        Rows = stance.SkylineText?.Replace("; ", "\n", StringComparison.Ordinal),
        Bearings = "true",
        ReadOn = LocalDatePattern.Iso.Format(today),
    };

    /// <summary>Draws it and saves it; the faults say what to mend, and then nothing was saved.</summary>
    public async Task<IReadOnlyList<FieldFault>> KeepAsync(IDbContextFactory<GuideDb> database, SignedIn warden, int vantagePointId, LocalDate today, Instant now, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var stance = await db.VantagePoints.SingleAsync(v => v.Id == vantagePointId, cancel);
        var before = stance.SkylineText;
        if (Draw(stance, today) is { Count: > 0 } faults)
            return faults;
        if (stance.SkylineText != before)
        {
            db.Add(Revision.OfSkyline(stance, before, warden.MemberId, now, "Drawn by hand"));
            db.Add(new AuditEntry(Act.SkylineDrawn, now, warden.MemberId, words: stance.Name));
        }
        try
        {
            await db.SaveChangesAsync(cancel);
            return [];
        }
        catch (DbUpdateConcurrencyException)
        {
            return [new("rows", "Somebody else changed this vantage point in the same moment. Load the page again, look at what stands there now, and draw yours once more if it is still wanted.")];
        }
    }

    /// <summary>Draws it, or says what to mend; nothing is changed while there is a fault.</summary>
    public IReadOnlyList<FieldFault> Draw(VantagePoint stance, LocalDate today)
    {
        try
        {
            if (string.IsNullOrWhiteSpace(Rows))
            {
                stance.Draw(Skyline.AssumedSea);
                return [];
            }

            var (turn, origin, on) = Bearings == "compass" ? Compass(stance) : (0, SkylineOrigin.ByHand, today);
            stance.Draw(new Skyline(Points(turn)), origin, on);
            return [];
        }
        catch (NotAcceptedException refused)
        {
            return [new(refused.Message.StartsWith("The magnetic model", StringComparison.Ordinal) || refused.Message.StartsWith("The day", StringComparison.Ordinal) ? "read-on" : "rows", refused.Message)];
        }
        catch (ArgumentException wrong)
        {
            return [new("rows", $"{wrong.Message.Split(" (Parameter", 2)[0]} Mend that line.")];
        }
    }

    private (double Turn, string Origin, LocalDate On) Compass(VantagePoint stance)
    {
        Require.That(LocalDatePattern.Iso.Parse(ReadOn ?? "").TryGetValue(default, out var on), "The day of the reading is missing. Write it as year-month-day, like 2026-11-25.");
        var declination = Declination.On(on, stance.Position);
        return (declination, SkylineOrigin.OnTheSpot(declination, on), on);
    }

    private IEnumerable<SkylinePoint> Points(double turn)
    {
        var lines = Rows!.Split(['\n', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        Require.That(lines.Length <= MostCorners, $"There are {lines.Length} corners; at most {MostCorners} are kept. Leave out those that change little.");
        return [.. lines.Select((line, i) => Point(line, i + 1, turn))];
    }

    private static SkylinePoint Point(string line, int number, double turn)
    {
        var shown = line.Length <= 40 ? line : line[..40] + "…";
        var parts = line.Split([' ', '\t', '°'], StringSplitOptions.RemoveEmptyEntries);
        Require.That(parts.Length == 3, $"Line {number}, \"{shown}\", has {parts.Length} parts. Write bearing, height in degrees and land, sea or unknown, like 22 2.5 land.");
        var kind = parts[2].ToLowerInvariant() switch { "land" => SkylineKind.Land, "sea" => SkylineKind.Sea, "unknown" => SkylineKind.Unknown, _ => (SkylineKind?)null };
        Require.That(kind is not null, $"Line {number}, \"{shown}\", is none of land, sea, unknown at its end. Write one of them.");
        return new SkylinePoint(Math.Round(((Number(parts[0], number, 0, 359.999, "The bearing") + turn) % 360 + 360) % 360, 2) % 360, Number(parts[1], number, -10, 90, "The height"), kind.Value);
    }

    private static double Number(string text, int line, double least, double most, string what)
    {
        Require.That(double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most,
            $"{what} in line {line} is \"{(text.Length <= 20 ? text : text[..20])}\". Write degrees from {least:0} to {(most > 359 ? "just under 360" : $"{most:0}")} with a decimal point.");
        return value;
    }
}
