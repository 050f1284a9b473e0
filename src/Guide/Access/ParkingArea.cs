using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

public sealed class ParkingArea
{
    private ParkingArea() { }

    public ParkingArea(string name, Position position, string surface, FactCheck check)
    {
        Name = Require.Text(name, 80, "The parking area's name");
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        Surface = Require.Text(surface, 80, "The surface");
        Check = check;
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public string Name { get; private set; } = "";

    public double LatitudeDegrees { get; private set; }

    public double LongitudeDegrees { get; private set; }

    public Position Position => new(LatitudeDegrees, LongitudeDegrees);

    public string Surface { get; private set; } = "";

    public FactCheck Check { get; private set; } = null!;

    /// <summary>Cars; null: nobody has counted.</summary>
    public int? Capacity { get; private set; }

    /// <summary>Price of one stay; zero is free, null unknown.</summary>
    public decimal? Cost { get; private set; }

    /// <summary>ISO 4217 code of the cost.</summary>
    public string? Currency { get; private set; }

    /// <summary>Clear height under the barrier, metres; null: no barrier.</summary>
    public double? HeightBarrierMetres { get; private set; }

    /// <summary>The gate is locked from this time…</summary>
    public LocalTime? LockedFrom { get; private set; }

    /// <summary>…until this one. Both null: never locked as far as known.</summary>
    public LocalTime? LockedUntil { get; private set; }

    /// <summary>When a car gets in and out; null: nobody has said.</summary>
    public OpeningHours? Hours { get; private set; }

    /// <summary>Whom to ask for a permit or for hours on request, and how.</summary>
    public string? AskWhom { get; private set; }

    /// <summary>Tide height from which the ground floods; null: not known to flood.</summary>
    public TideHeight? FloodsAbove { get; private set; }

    public string? Notes { get; private set; }

    public uint Version { get; private set; }

    public ParkingArea Lie(string name, Position position, string surface)
    {
        Name = Require.Text(name, 80, "The parking area's name");
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        Surface = Require.Text(surface, 80, "The surface");
        return this;
    }

    public ParkingArea CheckedAs(FactCheck check)
    {
        Check = check;
        return this;
    }

    public ParkingArea Hold(int? cars, decimal? cost = null, string? currency = null)
    {
        Capacity = cars is { } given ? Require.Between(given, 0, 5000, "The capacity", "cars") : null;
        Require.That(cost is null or (>= 0 and <= 10_000), "The cost is out of range. Enter the price of one stay.");
        Require.That(cost is null or 0 || currency is { Length: 3 }, "A cost needs its currency, as the three letters of ISO 4217, for example USD.");
        (Cost, Currency) = (cost, currency);
        return this;
    }

    public ParkingArea Bar(double? clearHeightMetres)
    {
        HeightBarrierMetres = Require.BetweenOrNull(clearHeightMetres, 1, 6, "The height barrier", "m");
        return this;
    }

    public ParkingArea Lock(LocalTime? from, LocalTime? until)
    {
        Require.That((from is null) == (until is null), "A gate is locked from one time until another. Enter both times, or neither.");
        Require.That(from is null || from != until, "A gate locked and unlocked at the same time is never open or never locked. Enter two different times, or leave both out.");
        (LockedFrom, LockedUntil) = (from, until);
        return this;
    }

    /// <summary>When a car gets in and out, and whom to ask.</summary>
    public ParkingArea OpenBy(OpeningHours? hours, string? askWhom = null)
    {
        (Hours, AskWhom) = (hours, Require.TextOrNull(askWhom, 200, "Whom to ask"));
        return this;
    }

    public ParkingArea FloodAbove(TideHeight? height)
    {
        FloodsAbove = height;
        return this;
    }

    public ParkingArea Note(string? notes)
    {
        Notes = Require.TextOrNull(notes, 600, "The notes");
        return this;
    }
}
